import * as z from 'zod';
import { lonLat } from '../geometry/points.ts';
import { AIR_BOUNDS } from '../units/airBounds.ts';
import {
  areaKinds,
  clubKinds,
  covers,
  grainStrengths,
  lieQualities,
  moistures,
  techniques,
} from '../words/vocabulary.ts';
import { clubLimits } from './playerRecords.ts';
import type { AtlasRecord } from './records.ts';

// zod probes for `new Function` otherwise, which a strict content policy reports as a violation.
z.config({ jitless: true });

/** The atlas format this program writes. Files and journals carry it; migrations.ts raises older ones. */
export const ATLAS_FORMAT = 4;

const lineKinds = ['tierEdge', 'ridge', 'contour', 'wall'] as const;

const finite = z.number();
const bearing = finite.min(0).max(360);
const text = z.string().max(200);
const note = z.string().max(20_000);
const label = z.string().min(1).max(12);
/** A name that several records share. */
const sharedName = z.string().min(1).max(60);
/** Stable ids: what a file, a command line and a web address can all carry unquoted. */
const id = z
  .string()
  .max(64)
  .regex(
    /^[A-Za-z0-9][A-Za-z0-9._:-]*$/,
    'must begin with a letter or digit and hold only letters, digits and . _ : -',
  );
const position = z
  .tuple([finite.min(-180).max(180), finite.min(-90).max(90)])
  .transform(([lonDeg, latDeg]) => lonLat(lonDeg, latDeg));
const heightM = finite.min(-500).max(9000);
const [lowestM, highestM] = AIR_BOUNDS.heightAboveSeaM;
const [coldestC, hottestC] = AIR_BOUNDS.temperatureC;

/** No club of a bag carries farther than this, metres. */
export const LONGEST_CARRY_M = 300;
const carryM = finite.positive().max(LONGEST_CARRY_M);
const carriesM = z
  .strictObject({ smallM: carryM, mediumM: carryM, longM: carryM })
  .refine(({ smallM, mediumM, longM }) => smallM < mediumM && mediumM < longM, {
    error: 'must rise from small to medium to long.',
  });

/** Nodes of one elevation grid: a complex at half a metre takes some 40,000. */
export const MOST_GRID_NODES = 65_536;

/** Longest side of a picture, pixels. */
export const LONGEST_PICTURE_SIDE_PX = 30_000;
const sidePx = finite.int().min(1).max(LONGEST_PICTURE_SIDE_PX);

/** One schema for each record type; `z.strictObject` so that nothing unknown is quietly dropped. */
export const recordSchemas = {
  atlas: z.strictObject({
    type: z.literal('atlas'),
    id: z.literal('atlas'),
    name: text,
    kind: z.enum(['course', 'practiceGround']),
    placed: z.boolean(),
    anchor: position,
    note,
  }),
  hole: z.strictObject({
    type: z.literal('hole'),
    id,
    label,
    order: finite.int().min(0).max(10_000),
    name: text,
    par: finite.int().min(2).max(9).nullable(),
    greenId: id.nullable(),
    line: z.array(position).min(2).nullable(),
  }),
  area: z.strictObject({
    type: z.literal('area'),
    id,
    kind: z.enum(areaKinds),
    name: text,
    rings: z.array(z.array(position).min(3)).min(1),
    lipHeightM: finite.min(0).max(20).nullable(),
    treeHeightM: finite.positive().max(130).nullable(),
    canopyBaseM: finite.min(0).max(130).nullable(),
    grain: z.strictObject({ towardsDeg: bearing, strength: z.enum(grainStrengths) }).exactOptional(),
  }),
  line: z.strictObject({
    type: z.literal('line'),
    id,
    kind: z.enum(lineKinds),
    name: text,
    positions: z.array(position).min(2),
    heightM: heightM.nullable(),
  }),
  spotHeight: z.strictObject({
    type: z.literal('spotHeight'),
    id,
    at: position,
    heightM,
    accuracyM: finite.positive().max(10),
  }),
  slopeReading: z.strictObject({
    type: z.literal('slopeReading'),
    id,
    at: position,
    slopePct: finite.min(0).max(200),
    downhillBearingDeg: bearing,
    accuracyPct: finite.positive().max(50),
  }),
  planeByEye: z.strictObject({
    type: z.literal('planeByEye'),
    id,
    at: position,
    reachM: finite.min(1).max(200),
    slopePct: finite.min(0).max(50),
    downhillBearingDeg: bearing,
    accuracyPct: finite.positive().max(50),
  }),
  elevationGrid: z
    .strictObject({
      type: z.literal('elevationGrid'),
      id,
      name: text,
      corners: z.array(z.array(position).length(4)).length(1),
      columns: finite.int().min(2).max(4096),
      rows: finite.int().min(2).max(4096),
      heightsM: z.array(heightM.nullable()).max(MOST_GRID_NODES),
      datumShiftM: finite.min(-9000).max(9000),
      accuracyM: finite.positive().max(10),
    })
    .refine(({ columns, rows, heightsM }) => heightsM.length === columns * rows, {
      path: ['heightsM'],
      message: 'does not hold one height for each node (columns x rows).',
    }),
  holeLocation: z.strictObject({
    type: z.literal('holeLocation'),
    id,
    holeId: id,
    label,
    name: text,
    at: position,
    sheet: sharedName.exactOptional(),
  }),
  ballPosition: z.strictObject({
    type: z.literal('ballPosition'),
    id,
    holeId: id,
    label,
    name: text,
    at: position,
    lie: z.enum(lieQualities),
    coverOverride: z.enum(covers).nullable(),
    moistureOverride: z.enum(moistures).exactOptional(),
    group: sharedName.exactOptional(),
  }),
  landmark: z.strictObject({
    type: z.literal('landmark'),
    id,
    name: text,
    at: position,
  }),
  conditions: z.strictObject({
    type: z.literal('conditions'),
    id,
    name: text,
    stimpFt: finite.min(3).max(20),
    firmness: finite.min(0).max(1),
    moisture: z.enum(moistures),
    windMps: finite.min(0).max(40),
    windFromDeg: bearing,
    flagstickIn: z.boolean().exactOptional(),
    heightAboveSeaM: finite.min(lowestM).max(highestM).exactOptional(),
    temperatureC: finite.min(coldestC).max(hottestC).exactOptional(),
    sheet: sharedName.exactOptional(),
    inUse: z.boolean(),
  }),
  player: z.strictObject({
    type: z.literal('player'),
    id,
    name: text,
    handed: z.enum(['right', 'left']),
    level: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('tour') }),
      z.strictObject({ kind: z.literal('handicap'), handicap: finite.min(-10).max(54) }),
      z.strictObject({ kind: z.literal('beginner') }),
    ]),
    bag: z
      .array(
        z.strictObject({
          id,
          kind: z.enum(clubKinds),
          name: text,
          loftDeg: finite.min(clubLimits.loft.least).max(clubLimits.loft.most),
          bounceDeg: finite.min(clubLimits.bounce.least).max(clubLimits.bounce.most),
          carriesM: carriesM.exactOptional(),
        }),
      )
      .max(40),
    repertoire: z.partialRecord(z.enum(techniques), z.enum(['mine', 'learning', 'notMine'])),
    simplicityMarginStrokes: finite.min(0).max(2),
    paceM: finite.min(0.3).max(1.5),
    inUse: z.boolean(),
  }),
  choice: z.strictObject({
    type: z.literal('choice'),
    id,
    ballId: id,
    flagId: id,
    playerId: id,
    optionId: z.string().min(1).max(200),
    note,
  }),
  source: z.strictObject({
    type: z.literal('source'),
    id,
    name: text,
    attribution: z.string().max(1000),
    licence: z.string().max(1000),
  }),
  picture: z.strictObject({
    type: z.literal('picture'),
    id,
    name: text,
    sha256: z.string().refine((typed) => /^[0-9a-f]{64}$/.test(typed), {
      error: 'is not a SHA-256 of 64 hex digits.',
    }),
    mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp']),
    widthPx: sidePx,
    heightPx: sidePx,
    corners: z.array(z.array(position).length(4)).length(1),
    opacity: finite.min(0).max(1),
    shown: z.boolean(),
    attribution: z.string().max(1000),
    licence: z.string().max(1000),
  }),
} satisfies Record<AtlasRecord['type'], z.ZodType>;

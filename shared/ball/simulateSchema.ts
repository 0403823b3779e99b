import { z } from 'zod';
import { AIR_BOUNDS } from '../units/airBounds.ts';
import { covers, lieQualities, moistures } from '../words/vocabulary.ts';

// Compiled validators need `Function`, which the window's content policy forbids.
z.config({ jitless: true });

const within = (low: number, high: number) =>
  z
    .number(`must be a number from ${String(low)} to ${String(high)}`)
    .min(low)
    .max(high);
const bearing = within(-360, 360);

const strike = z.strictObject({
  loftDeg: within(-5, 80),
  leanDeg: within(-20, 25).default(0),
  attackDeg: within(-20, 15).default(0),
  faceOpenDeg: within(-30, 60).default(0),
  lieSlopeDeg: within(-45, 45).default(0),
  /** Positive with the ball above the feet. */
  lieAcrossDeg: within(-45, 45).default(0),
  bounceDeg: within(-5, 25).default(8),
  /** Left out where it is solved for. */
  clubheadMps: within(0, 70).optional(),
  bearingDeg: bearing.default(0),
  lie: z.enum(lieQualities).default('clean'),
  clubKind: z.enum(['putter', 'lofted']).default('lofted'),
  handed: z.enum(['right', 'left']).default('right'),
});

const launch = z.strictObject({
  speedMps: within(0, 100).optional(),
  elevationDeg: within(-30, 90),
  bearingDeg: bearing.default(0),
  backspinRpm: within(-15_000, 15_000).default(0),
  spinAxisDeg: within(-90, 90).default(0),
});

const roll = z.strictObject({ speedMps: within(0, 30).optional(), bearingDeg: bearing.default(0) });

/** One shot on one plane, as `swale simulate` reads it. Units are in the names; a key that is not here is refused. */
export const simulateSchema = z.strictObject({
  ground: z
    .strictObject({
      slopePct: within(0, 100).default(0),
      downhillBearingDeg: bearing.default(0),
      cover: z.enum(covers).default('green'),
    })
    .default({ slopePct: 0, downhillBearingDeg: 0, cover: 'green' }),
  stimpFt: within(3, 20).default(10),
  firmness: within(0, 1).default(0.5),
  moisture: z.enum(moistures).default('dry'),
  windMps: within(0, 40).default(0),
  windFromDeg: bearing.default(0),
  heightAboveSeaM: within(...AIR_BOUNDS.heightAboveSeaM).exactOptional(),
  temperatureC: within(...AIR_BOUNDS.temperatureC).exactOptional(),
  strike: strike.optional(),
  launch: launch.optional(),
  roll: roll.optional(),
  hole: z
    .strictObject({
      eastM: within(-1000, 1000),
      northM: within(-1000, 1000),
      flagstickIn: z.boolean().default(false),
    })
    .optional(),
  solve: z
    .union([z.strictObject({ carryM: within(0.01, 300) }), z.strictObject({ totalM: within(0.01, 400) })])
    .optional(),
});

export type SimulateRequest = z.infer<typeof simulateSchema>;

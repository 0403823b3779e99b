import type { AtlasDocument, AtlasRecord, Club, PlayerRecord } from '../../../shared/atlas/records.ts';
import { localFrame } from '../../../shared/geometry/localFrame.ts';
import { type LonLat, lonLat, planePoint } from '../../../shared/geometry/points.ts';
import type { AreaKind, Cover, LieQuality } from '../../../shared/words/vocabulary.ts';

type Pair = readonly [eastM: number, northM: number];

export interface BallSpec {
  readonly id: string;
  readonly at: Pair;
  readonly lie?: LieQuality;
  readonly cover?: Cover;
}

/** An invented hole: a round green of radius 13 m about (0, 0), its surrounds, and ground of a given height. */
export interface ComplexSpec {
  readonly heightM?: (eastM: number, northM: number) => number;
  readonly flags?: readonly { readonly id: string; readonly at: Pair }[];
  readonly balls: readonly BallSpec[];
  readonly player?: Partial<PlayerRecord>;
  readonly stimpFt?: number;
  /** Mirrored east to west. */
  readonly mirrored?: boolean;
  readonly bunker?: boolean;
  readonly surround?: AreaKind;
}

export const club = (id: string, kind: Club['kind'], name: string, loftDeg: number, bounceDeg = 6): Club => ({
  id,
  kind,
  name,
  loftDeg,
  bounceDeg,
});

export const fullBag: readonly Club[] = [
  club('pt', 'putter', 'putter', 3, 0),
  club('i6', 'iron', '6-iron', 28, 3),
  club('i8', 'iron', '8-iron', 36, 4),
  club('i9', 'iron', '9-iron', 41, 5),
  club('w46', 'wedge', '46° wedge', 46, 8),
  club('w52', 'wedge', '52° wedge', 52, 10),
  club('w56', 'wedge', '56° wedge', 56, 12),
  club('w60', 'wedge', '60° wedge', 60, 8),
];

const anchor = lonLat(-2.803, 56.343);
const frame = localFrame(anchor);

const circle = (east: number, north: number, radius: number, points = 40): readonly Pair[] =>
  Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    return [east + radius * Math.cos(angle), north + radius * Math.sin(angle)];
  });

export function complexDocument(spec: ComplexSpec): AtlasDocument {
  const side = spec.mirrored === true ? -1 : 1;
  const at = ([east, north]: Pair): LonLat => frame.toLonLat(planePoint(side * east, north));
  const ring = (points: readonly Pair[]): readonly LonLat[] => {
    const positions = points.map(at);
    return spec.mirrored === true ? positions.reverse() : positions;
  };
  const area = (id: string, kind: AreaKind, points: readonly Pair[]): AtlasRecord => ({
    type: 'area',
    id,
    kind,
    name: id,
    rings: [ring(points)],
    lipHeightM: kind === 'bunker' ? 0.6 : null,
    treeHeightM: null,
    canopyBaseM: null,
  });
  const height = spec.heightM ?? (() => 0);
  const spots: AtlasRecord[] = [];
  for (let east = -24; east <= 24; east += 8) {
    for (let north = -24; north <= 24; north += 8) {
      spots.push({
        type: 'spotHeight',
        id: `h${String(east)}/${String(north)}`,
        at: at([east, north]),
        heightM: height(east, north),
        accuracyM: 0.01,
      });
    }
  }
  const records: AtlasRecord[] = [
    { type: 'atlas', id: 'atlas', name: 'Invented', kind: 'course', placed: false, anchor, note: '' },
    { type: 'hole', id: 'h1', label: '1', order: 1, name: 'First', par: 4, greenId: 'green', line: null },
    area('green', 'green', circle(0, 0, 13)),
    area('fringe', 'fringe', circle(0, 0, 14.2)),
    area('surround', spec.surround ?? 'fairway', circle(0, 0, 75)),
    ...(spec.bunker === false ? [] : [area('bunker', 'bunker', circle(16, -6, 3.5, 16))]),
    ...spots,
    ...(spec.flags ?? [{ id: 'A', at: [3, 4] as const }]).map((flag): AtlasRecord => ({
      type: 'holeLocation',
      id: flag.id,
      holeId: 'h1',
      label: flag.id,
      name: '',
      at: at(flag.at),
    })),
    ...spec.balls.map((ball): AtlasRecord => ({
      type: 'ballPosition',
      id: ball.id,
      holeId: 'h1',
      label: ball.id,
      name: '',
      at: at(ball.at),
      lie: ball.lie ?? 'clean',
      coverOverride: ball.cover ?? null,
    })),
    {
      type: 'conditions',
      id: 'day',
      name: 'Day',
      stimpFt: spec.stimpFt ?? 10,
      firmness: 0.5,
      moisture: 'dry',
      windMps: 0,
      windFromDeg: 0,
      inUse: true,
    },
    {
      type: 'player',
      id: 'p',
      name: 'Player',
      handed: spec.mirrored === true ? 'left' : 'right',
      level: { kind: 'handicap', handicap: 10 },
      bag: fullBag,
      repertoire: {},
      simplicityMarginStrokes: 0.05,
      paceM: 0.9144,
      inUse: true,
      ...spec.player,
    },
  ];
  return { records: new Map(records.map((record) => [record.id, record])) };
}

import type { AreaRecord, AtlasRecord, Rings } from '../shared/atlas/records.ts';
import type { LocalFrame } from '../shared/geometry/localFrame.ts';
import { planePoint, type PlanePoint, type PlaneRing } from '../shared/geometry/points.ts';
import { distanceM, insideDistanceM, pointInRing } from '../shared/geometry/ring.ts';
import { pointAlong } from '../shared/geometry/bearing.ts';
import { type Generator, generator } from '../shared/random/generator.ts';
import type { Complex, ComplexArea, ComplexBall } from './complex.ts';
import { band, beyondEdge, blobRing, rayFrom, smoothLine, smoothRing } from './outline.ts';
import { fallAt, heightAt, tierShare } from './relief.ts';

/** Reading noise of the invented survey, one standard deviation. */
const HEIGHT_NOISE_M = 0.01;
const SLOPE_NOISE_PCT = 0.2;
/** No two heights closer than this. */
const APART_M = 0.9;

/** The complex as somebody would have surveyed it: outlines walked, heights and slopes read with small errors. */
export function surveyed(complex: Complex, frame: LocalFrame): readonly AtlasRecord[] {
  const noise = generator(complex.seed);
  const angle = (complex.playBearing * Math.PI) / 180;
  const place = ({ eastM: x, northM: y }: PlanePoint): PlanePoint =>
    planePoint(
      complex.at.eastM + x * Math.cos(angle) + y * Math.sin(angle),
      complex.at.northM - x * Math.sin(angle) + y * Math.cos(angle),
    );
  const lonLat = (point: PlanePoint) => frame.toLonLat(place(point));
  const { id, green } = complex;

  const area = (
    index: string,
    { kind, name, lipHeightM, treeHeightM, canopyBaseM }: ComplexArea,
    ring: PlaneRing,
  ): AreaRecord => ({
    type: 'area',
    id: `${id}-${index}`,
    kind,
    name,
    rings: [ring.map(lonLat)] satisfies Rings,
    lipHeightM: lipHeightM ?? null,
    treeHeightM: treeHeightM ?? null,
    canopyBaseM: canopyBaseM ?? null,
  });
  const outlines = complex.areas.map((drawn) => ({ drawn, ring: outline(complex, drawn) }));
  const counts = new Map<string, number>();
  const areas = outlines.map(({ drawn, ring }) => {
    const count = (counts.get(drawn.kind) ?? 0) + 1;
    counts.set(drawn.kind, count);
    return area(`${drawn.kind}-${String(count)}`, drawn, ring);
  });
  const greenShape = { blob: green };
  areas.push(
    area('green', { kind: 'green', name: `${complex.name} green`, shape: greenShape }, blobRing(green, 48)),
    area(
      'fringe',
      { kind: 'fringe', name: 'Fringe', shape: greenShape },
      blobRing(green, 48, complex.fringeM),
    ),
  );

  const noGround = outlines
    .filter(({ drawn: { kind } }) => kind === 'bunker' || kind === 'penaltyArea' || kind === 'outOfBounds')
    .map(({ ring }) => ring);
  const heights = heightPlaces(complex, noise)
    .filter((point) => !noGround.some((ring) => pointInRing(point, ring)))
    .filter((point, i, all) => all.slice(0, i).every((earlier) => distanceM(point, earlier) >= APART_M));
  const digits = String(heights.length).length;

  return [
    {
      type: 'hole',
      id,
      label: complex.label,
      order: complex.order,
      name: complex.name,
      par: complex.par,
      greenId: `${id}-green`,
      line: complex.line.length === 0 ? null : complex.line.map(lonLat),
    },
    ...areas,
    ...tierLine(complex).map((points): AtlasRecord => ({
      type: 'line',
      id: `${id}-tier`,
      kind: 'tierEdge',
      name: 'Tier edge',
      positions: points.map(lonLat),
      heightM: null,
    })),
    ...heights.map((point, i): AtlasRecord => ({
      type: 'spotHeight',
      id: `${id}-spot-${String(i + 1).padStart(digits, '0')}`,
      at: lonLat(point),
      heightM: rounded(heightAt(complex.relief, green, point) + HEIGHT_NOISE_M * noise.normal(), 0.01),
      accuracyM: HEIGHT_NOISE_M,
    })),
    ...slopePlaces(complex).map((point, i): AtlasRecord => {
      const fall = fallAt(complex.relief, green, point);
      return {
        type: 'slopeReading',
        id: `${id}-slope-${String(i + 1)}`,
        at: lonLat(point),
        slopePct: rounded(Math.max(0, fall.slopePct + SLOPE_NOISE_PCT * noise.normal()), 0.1),
        downhillBearingDeg: rounded(fall.bearing + complex.playBearing + 2 * noise.normal() + 720, 1) % 360,
        accuracyPct: 0.3,
      };
    }),
    ...complex.flags.map(({ label, name, at }): AtlasRecord => ({
      type: 'holeLocation',
      id: `${id}-flag-${label.toLowerCase()}`,
      holeId: id,
      label,
      name,
      at: lonLat(at),
    })),
    ...complex.balls.map(({ name, lie, at }, i): AtlasRecord => ({
      type: 'ballPosition',
      id: `${id}-ball-${String(i + 1)}`,
      holeId: id,
      label: String(i + 1),
      name,
      at: lonLat(ballPlace(complex, at)),
      lie,
      coverOverride: null,
    })),
  ];
}

export function outline({ green }: Complex, { shape }: ComplexArea): PlaneRing {
  if ('blob' in shape)
    return blobRing(shape.blob, Math.max(shape.blob.halfWidthM, shape.blob.halfLengthM) > 20 ? 60 : 28);
  if ('corners' in shape) return shape.corners;
  if ('bandAlong' in shape) return band(smoothLine(shape.bandAlong, 6), shape.widthM);
  return smoothRing(
    shape.around.map(([bearing, beyondM]) => beyondEdge(green, bearing, beyondM)),
    3,
  );
}

export function ballPlace({ green }: Complex, at: ComplexBall['at']): PlanePoint {
  return 'eastM' in at ? at : beyondEdge(green, at[0], at[1]);
}

/** On the green a jittered grid and its edge; round it rings, banks from top to foot, dips across, the ramp of a tier. */
function heightPlaces({ green, relief }: Complex, noise: Generator): readonly PlanePoint[] {
  const places: PlanePoint[] = [];
  const add = (point: PlanePoint, jitterM: number): void => {
    places.push(
      planePoint(
        point.eastM + jitterM * (2 * noise.uniform() - 1),
        point.northM + jitterM * (2 * noise.uniform() - 1),
      ),
    );
  };
  const ring = blobRing(green, 96);
  const stepM = 4.2;
  for (let row = -4; row <= 4; row += 1)
    for (let column = -4; column <= 4; column += 1) {
      const point = planePoint((column + (row % 2 === 0 ? 0.25 : -0.25)) * stepM, row * stepM);
      if (insideDistanceM(point, [ring]) > 1.6) add(point, 0.6);
    }
  for (let i = 0; i < 12; i += 1) add(beyondEdge(green, 30 * i + 8, -0.6), 0.3);
  for (const [beyondM, count, turn] of [
    [1.2, 8, 20],
    [4, 10, 0],
    [8, 10, 18],
    [14, 9, 5],
    [22, 9, 25],
    [31, 8, 0],
  ] as const)
    for (let i = 0; i < count; i += 1) add(beyondEdge(green, turn + (360 * i) / count, beyondM), 0.5);
  for (const bank of relief.banks)
    for (const off of [-0.6, 0, 0.6])
      for (const share of [0, 0.5, 1])
        add(
          beyondEdge(
            green,
            bank.bearing + off * bank.spreadDeg,
            bank.fromM + share * (bank.toM - bank.fromM),
          ),
          0.2,
        );
  for (const { from, to, halfWidthM } of relief.valleys)
    for (const share of [0, 0.35, 0.7, 1])
      for (const side of [-1.2, 0, 1.2]) {
        const across = Math.atan2(to.eastM - from.eastM, to.northM - from.northM) + Math.PI / 2;
        add(
          planePoint(
            from.eastM + share * (to.eastM - from.eastM) + side * halfWidthM * Math.sin(across),
            from.northM + share * (to.northM - from.northM) + side * halfWidthM * Math.cos(across),
          ),
          0.2,
        );
      }
  return places;
}

/** Six places where a level was laid: spread over the green, clear of its edge. */
function slopePlaces({ green }: Complex): readonly PlanePoint[] {
  return [25, 85, 145, 205, 265, 325].map((bearing, i) =>
    beyondEdge(green, bearing, i % 2 === 0 ? -4.4 : -6.6),
  );
}

/** Along the crest of the ramp, where the upper tier begins to fall, kept inside the green. */
function tierLine(complex: Complex): readonly (readonly PlanePoint[])[] {
  const { tier } = complex.relief;
  if (tier === null) return [];
  const points: PlanePoint[] = [];
  for (let across = -16; across <= 16; across += 1.6) {
    const start = pointAlong(tier.through, tier.upBearing + 90, across);
    const point = pointAlong(start, tier.upBearing, tier.rampM * (1 - tierShare(complex.relief, start)));
    if (rayFrom(complex.green, point).beyondM < -0.8) points.push(point);
  }
  return [points];
}

const rounded = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(6));

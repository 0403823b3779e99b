import {
  buffer,
  difference,
  featureCollection,
  intersect,
  lineString,
  polygon as turfPolygon,
  union,
  unkinkPolygon,
} from '@turf/turf';
import type { Feature, LineString, MultiPolygon, Polygon } from 'geojson';
import { planePoint, type PlanePoint, type PlanePolygon, type PlaneRing } from './points.ts';
import { polygonAreaM2, signedAreaM2, woundPolygon } from './ring.ts';

/**
 * Set operations on polygons. Turf does the topology on plane metres in place of degrees, where its flat operations hold
 * as they are; nothing is measured with it. Results are wound, with slivers under 1 cm2 left out.
 */
const SLIVER_M2 = 1e-4;

export function unionOf(polygons: readonly PlanePolygon[]): readonly PlanePolygon[] {
  if (polygons.length < 2) return polygons.map(woundPolygon);
  return pieces(union(featureCollection(polygons.map(asFeature))));
}

export function overlapOf(a: PlanePolygon, b: PlanePolygon): readonly PlanePolygon[] {
  return pieces(intersect(featureCollection([asFeature(a), asFeature(b)])));
}

export function differenceOf(a: PlanePolygon, b: PlanePolygon): readonly PlanePolygon[] {
  return pieces(difference(featureCollection([asFeature(a), asFeature(b)])));
}

/** The parts a crossing outline falls into, largest first. */
export function untangled(ring: PlaneRing): readonly PlanePolygon[] {
  return unkinkPolygon(asFeature([ring]))
    .features.flatMap((part) => pieces(part))
    .sort((a, b) => polygonAreaM2(b) - polygonAreaM2(a));
}

/** Radius of turf's sphere: plane metres go in as degrees on it, about 0 N 0 E. */
const SPHERE_M = 6371008.8;

/**
 * The polygon grown by a distance (shrunk when negative), corners rounded with 16 steps a quarter turn. Turf measures on a
 * sphere, so the plane is wrapped onto one for it; within 500 m of the origin that costs under a millimetre.
 */
export function grown(polygon: PlanePolygon, byM: number): readonly PlanePolygon[] {
  const first = polygon[0]?.[0] ?? planePoint(0, 0);
  return buffered(asFeature(polygon.map((ring) => ring.map((p) => wrapped(p, first)))), first, byM, 16);
}

/** The band of a stated width along a line, round at its bends and ends: outer ring and what it encloses. */
export function bandAlong(line: readonly PlanePoint[], widthM: number): readonly PlanePolygon[] {
  const [first] = line;
  if (first === undefined || line.length < 2 || !(widthM > 0)) return [];
  const along = lineString(
    line.map((p) => {
      const { eastM, northM } = wrapped(p, first);
      return [eastM, northM];
    }),
  );
  return buffered(along, first, widthM / 2, 4);
}

const DEGREES_PER_M = 180 / Math.PI / SPHERE_M;

const wrapped = (p: PlanePoint, first: PlanePoint): PlanePoint =>
  planePoint((p.eastM - first.eastM) * DEGREES_PER_M, (p.northM - first.northM) * DEGREES_PER_M);

const buffered = (
  feature: Feature<Polygon | LineString>,
  first: PlanePoint,
  byM: number,
  steps: number,
): readonly PlanePolygon[] =>
  pieces(buffer(feature, byM / 1000, { units: 'kilometers', steps }) ?? null, (lon, lat) =>
    planePoint(first.eastM + lon / DEGREES_PER_M, first.northM + lat / DEGREES_PER_M),
  );

function asFeature(polygon: PlanePolygon): Feature<Polygon> {
  return turfPolygon(
    polygon.map((ring) => [...ring, ...ring.slice(0, 1)].map(({ eastM, northM }) => [eastM, northM])),
  );
}

function pieces(
  found: Feature<Polygon | MultiPolygon> | null,
  point: (x: number, y: number) => ReturnType<typeof planePoint> = planePoint,
): readonly PlanePolygon[] {
  if (found === null) return [];
  const { geometry } = found;
  const polygons = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  return polygons
    .map((rings) =>
      woundPolygon(
        rings
          .map((ring) => ring.slice(0, -1).map(([x = NaN, y = NaN]) => point(x, y)))
          .filter((ring) => Math.abs(signedAreaM2(ring)) > SLIVER_M2),
      ),
    )
    .filter((polygon) => polygon.length > 0);
}

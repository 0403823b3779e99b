import { geodesic } from '../../shared/geometry/geodesic.ts';
import { localFrame } from '../../shared/geometry/localFrame.ts';
import { lonLat, type LonLat } from '../../shared/geometry/points.ts';
import { distanceM } from '../../shared/geometry/ring.ts';
import { bearingDeg } from '../../shared/geometry/bearing.ts';
import type { CheckGroup, CheckRow } from './row.ts';

const KARNEY = 'geographiclib-python test_geodesic.py (C. F. F. Karney)';

/** lat1, lon1, azi1, lat2, lon2, s12, as printed there but for digits beyond a double. */
const long: readonly (readonly [number, number, number, number, number, number])[] = [
  [35.60777, -139.44815, 111.09874842956033, -11.17491, -69.95921, 8935244.56048183],
  [55.52454, 106.05087, 22.0200598809828, 77.03196, 197.18234, 4105086.171392441],
  [-21.97856, 142.59065, -32.44456876433189, 41.84138, 98.56635, 8394328.894657671],
  [-19.79938, -174.47484, 71.16727578017154, -11.99349, -154.35109, 2319004.860116939],
  [-41.22777, 122.32875, 14.285113402275739, -7.57291, 130.37946, 3812686.035106021],
];

const dms = (degrees: number, minutes: number, seconds: number): number =>
  degrees + minutes / 60 + seconds / 3600;
const flindersPeak = lonLat(dms(144, 25, 29.5244), -dms(37, 57, 3.7203));
const buninyong = lonLat(dms(143, 55, 35.3839), -dms(37, 39, 10.1561));

/** In the plane of a frame anchored at the first point. */
function inPlane(from: LonLat, to: LonLat): { distance: number; bearing: number } {
  const frame = localFrame(from);
  const [a, b] = [frame.toPlane(from), frame.toPlane(to)];
  return { distance: distanceM(a, b), bearing: bearingDeg(a, b) };
}

function course(name: string, from: LonLat, to: LonLat, expected: number): readonly CheckRow[] {
  const { distance } = inPlane(from, to);
  return [
    {
      quantity: `Length in the local frame, ${name}`,
      source: 'references, section 10: independent geodesic, printed to 0.1 mm',
      mark: 'computed',
      expected,
      ours: distance,
      tolerance: 5e-5,
      unit: 'm',
    },
    {
      quantity: `The same against the geodesic, ${name}`,
      source: 'GeographicLib, run beside ours',
      mark: 'computed',
      expected: geodesic(from, to).distanceM,
      ours: distance,
      tolerance: 1e-7,
      unit: 'm',
    },
  ];
}

const group: CheckGroup = {
  title: 'Distances on the ellipsoid',
  measure: () => {
    const corner = inPlane(lonLat(-82.02, 33.503), lonLat(-82.0189, 33.5039));
    const flinders = geodesic(flindersPeak, buninyong);
    return [
      ...long.flatMap(([lat1, lon1, azimuth, lat2, lon2, metres], i): readonly CheckRow[] => {
        const ours = geodesic(lonLat(lon1, lat1), lonLat(lon2, lat2));
        const name = `geodesic ${String(i + 1)} of five`;
        return [
          {
            quantity: `Length, ${name}`,
            source: KARNEY,
            mark: 'found',
            expected: metres,
            ours: ours.distanceM,
            tolerance: 1e-6,
            unit: 'm',
          },
          {
            quantity: `First bearing, ${name}`,
            source: KARNEY,
            mark: 'found',
            expected: azimuth < 0 ? azimuth + 360 : azimuth,
            ours: ours.bearingDeg,
            tolerance: 1e-10,
            unit: 'deg',
          },
        ];
      }),
      {
        quantity: 'Length, 40.6 N 73.8 W to 49 01 N 2 33 E',
        source: KARNEY,
        mark: 'found',
        expected: 5853226,
        ours: geodesic(lonLat(-73.8, 40.6), lonLat(2.55, 49.01666667)).distanceM,
        tolerance: 0.5,
        unit: 'm',
      },
      {
        quantity: 'Length of a very short line',
        source: KARNEY,
        mark: 'found',
        expected: 0.072,
        ours: geodesic(lonLat(0, 36.493349428792), lonLat(0.0000008, 36.49334942879201)).distanceM,
        tolerance: 5e-4,
        unit: 'm',
      },
      {
        quantity: 'The same line in the local frame',
        source: KARNEY,
        mark: 'found',
        expected: 0.072,
        ours: inPlane(lonLat(0, 36.493349428792), lonLat(0.0000008, 36.49334942879201)).distance,
        tolerance: 5e-4,
        unit: 'm',
      },
      {
        quantity: 'Length, Flinders Peak to Buninyong',
        source:
          'Vincenty test line of the Australian datum manual (GRS 80; WGS 84 differs by less than 0.1 mm here)',
        mark: 'from memory',
        expected: 54972.271,
        ours: flinders.distanceM,
        tolerance: 1e-3,
        unit: 'm',
      },
      {
        quantity: 'First bearing, Flinders Peak to Buninyong',
        source: 'the same',
        mark: 'from memory',
        expected: dms(306, 52, 5.37),
        ours: flinders.bearingDeg,
        tolerance: 0.005 / 3600 + 1e-9,
        unit: 'deg',
      },
      ...course('100 m north at 56 N', lonLat(-2.803, 56.343), lonLat(-2.803, 56.3439), 100.2133),
      ...course('99 m east at 56 N', lonLat(-2.803, 56.343), lonLat(-2.8014, 56.343), 98.9425),
      ...course('143 m north-east at 33 N', lonLat(-82.02, 33.503), lonLat(-82.0189, 33.5039), 142.8688),
      {
        quantity: 'Bearing in the local frame, 143 m north-east at 33 N',
        source: 'references, section 10: independent geodesic',
        mark: 'computed',
        expected: 45.6771,
        ours: corner.bearing,
        tolerance: 1e-4,
        unit: 'deg',
        note: 'the line of the plane and the geodesic leave the first point within 1e-7 degrees of each other here',
      },
    ];
  },
};
export default group;

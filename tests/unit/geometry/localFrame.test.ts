import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { geodesic } from '../../../shared/geometry/geodesic.ts';
import { localFrame } from '../../../shared/geometry/localFrame.ts';
import { lonLat, planePoint } from '../../../shared/geometry/points.ts';
import { distanceM } from '../../../shared/geometry/ring.ts';

const anchors = fc.tuple(
  fc.double({ min: -180, max: 180, noNaN: true }),
  fc.double({ min: -80, max: 80, noNaN: true }),
);
const metres = (reach: number) => fc.double({ min: -reach, max: reach, noNaN: true });

describe('the local frame', () => {
  it('comes back to the same point of the plane', () => {
    fc.assert(
      fc.property(anchors, metres(2000), metres(2000), ([lon, lat], eastM, northM) => {
        const frame = localFrame(lonLat(lon, lat));
        const there = planePoint(eastM, northM);
        // A double holds 180 degrees to 2.8e-14, which is 3 nm on the ground.
        expect(distanceM(frame.toPlane(frame.toLonLat(there)), there)).toBeLessThan(5e-9);
      }),
      { seed: 2026, numRuns: 300 },
    );
  });

  it('measures as the geodesic does over a whole course', () => {
    fc.assert(
      fc.property(anchors, metres(400), metres(400), ([lon, lat], eastM, northM) => {
        const frame = localFrame(lonLat(lon, lat));
        const at = frame.toLonLat(planePoint(eastM, northM));
        const { distanceM: far, bearingDeg } = geodesic(frame.anchor, at);
        expect(Math.abs(Math.hypot(eastM, northM) - far)).toBeLessThan(2e-6);
        if (far < 1) return;
        const turn = bearingDeg - (Math.atan2(eastM, northM) * 180) / Math.PI;
        expect(Math.abs(((turn + 540) % 360) - 180)).toBeLessThan(1e-5);
      }),
      { seed: 2027, numRuns: 300 },
    );
  });

  it('does not break where longitude wraps round', () => {
    const frame = localFrame(lonLat(179.9999, -17));
    const { eastM } = frame.toPlane(lonLat(-179.9999, -17));
    expect(eastM).toBeGreaterThan(21);
    expect(eastM).toBeLessThan(22);
    expect(frame.toLonLat(planePoint(eastM, 0))[0]).toBeCloseTo(-179.9999, 9);
  });

  it('brings back points as far as an atlas may reach', () => {
    const frame = localFrame(lonLat(-30, 60));
    const there = planePoint(35_000, -35_000);
    expect(distanceM(frame.toPlane(frame.toLonLat(there)), there)).toBeLessThan(5e-9);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Affine,
  onPlane,
  onSheet,
  type SheetPoint,
  turnedAffine,
} from '../../../shared/geometry/affine.ts';
import { planePoint } from '../../../shared/geometry/points.ts';
import { fitSheet, type KnownPoint } from '../../../shared/geometry/sheetFit.ts';

const px = fc.record({ x: fc.integer({ min: 0, max: 4000 }), y: fc.integer({ min: 0, max: 3000 }) });
const metres = fc.double({ min: -500, max: 500, noNaN: true });
const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const scales = fc.double({ min: 0.005, max: 0.5, noNaN: true });

const known = (points: readonly SheetPoint[], map: Affine): readonly KnownPoint[] =>
  points.map((on) => ({ on, at: onPlane(map, on) }));
const similar = (scale: number, turn: number, c: number, f: number): Affine => ({
  ...{ a: scale * Math.cos(turn), b: -scale * Math.sin(turn), c },
  ...{ d: scale * Math.sin(turn), e: scale * Math.cos(turn), f },
});
const apart = (one: SheetPoint, two: SheetPoint): number => Math.hypot(one.x - two.x, one.y - two.y);

describe('a sheet laid on known points', () => {
  it('comes to lie where it was: two points keep its shape, three stretch it, more miss nothing that agrees', () => {
    const corner = { x: 4000, y: 3000 };
    fc.assert(
      fc.property(
        fc.array(px, { minLength: 4, maxLength: 8 }),
        fc.tuple(scales, angle, metres, metres, fc.double({ min: 0.5, max: 1.5, noNaN: true })),
        (points, [scale, turn, c, f, stretch]) => {
          const [p, q, r] = points;
          if (p === undefined || q === undefined || r === undefined || apart(p, q) < 50) return;
          const kept = similar(scale, turn, c, f);
          const two = fitSheet(known([p, q], kept), 'similar');
          expect(two.rmsM).toBeNull();
          const at = onPlane(two.affine, corner);
          expect(
            Math.hypot(at.eastM - onPlane(kept, corner).eastM, at.northM - onPlane(kept, corner).northM),
          ).toBeLessThan(1e-8);
          const cross = Math.abs((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
          if (cross < 50_000 || cross / Math.max(apart(p, q), apart(p, r), apart(q, r)) ** 2 < 0.1) return;
          const stretched = { ...kept, b: kept.b * stretch, e: kept.e * stretch };
          const three = fitSheet(known([p, q, r], stretched), 'affine');
          expect(three.rmsM).toBeNull();
          const all = fitSheet(known(points, stretched), 'affine');
          expect(all.rmsM).toBeLessThan(1e-8);
          const back = onSheet(three.affine, onPlane(stretched, corner));
          expect(apart(back ?? { x: 0, y: 0 }, corner)).toBeLessThan(1e-4);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('leaves misses that no other lie of the sheet makes smaller', () => {
    const truth = similar(0.02, 0.4, 10, -5);
    const wrong = [0.1, -0.2, 0.15, 0.05, -0.1];
    const points = known(
      [
        { x: 0, y: 0 },
        { x: 4000, y: 200 },
        { x: 3800, y: 2900 },
        { x: 100, y: 2800 },
        { x: 2000, y: 1500 },
      ],
      truth,
    ).map(({ on, at }, i) => ({
      on,
      at: planePoint(at.eastM + (wrong[i] ?? 0), at.northM - (wrong[4 - i] ?? 0)),
    }));
    const square = (map: Affine): number =>
      points.reduce((sum, { on, at }) => {
        const here = onPlane(map, on);
        return sum + (here.eastM - at.eastM) ** 2 + (here.northM - at.northM) ** 2;
      }, 0);
    for (const kind of ['rigid', 'similar', 'affine'] as const) {
      // In metres, so that a rigid fit is near.
      const scaled =
        kind === 'rigid'
          ? points.map(({ on, at }) => ({ on: { x: on.x * 0.02, y: on.y * 0.02 }, at }))
          : points;
      const { affine, rmsM, missesM } = fitSheet(scaled, kind);
      const best =
        kind === 'rigid'
          ? { ...affine, a: affine.a * 0.02, b: affine.b * 0.02, d: affine.d * 0.02, e: affine.e * 0.02 }
          : affine;
      expect(rmsM).toBeCloseTo(Math.sqrt(square(best) / 5), 9);
      expect(Math.max(...missesM)).toBeLessThan(0.4);
      const middle = planePoint(30, 30);
      for (const [cos, sin] of [
        [Math.cos(1e-3), Math.sin(1e-3)],
        [Math.cos(1e-3), -Math.sin(1e-3)],
      ] as const)
        expect(square(turnedAffine(best, middle, cos, sin))).toBeGreaterThan(square(best));
      expect(square({ ...best, c: best.c + 0.01 })).toBeGreaterThan(square(best));
      expect(square({ ...best, f: best.f - 0.01 })).toBeGreaterThan(square(best));
    }
  });

  it('turns clockwise about a point and enlarges', () => {
    const turned = turnedAffine(similar(1, 0, 0, 0), planePoint(10, 0), 0, 2);
    expect(onPlane(turned, { x: 10, y: 1 })).toEqual(planePoint(12, 0));
  });

  it('says what is wrong with points that settle nothing', () => {
    const at = (x: number, y: number, eastM: number, northM: number): KnownPoint => ({
      on: { x, y },
      at: planePoint(eastM, northM),
    });
    const codeOf = (points: readonly KnownPoint[], kind: Parameters<typeof fitSheet>[1]): unknown => {
      try {
        return fitSheet(points, kind);
      } catch (problem) {
        return problem;
      }
    };
    expect(codeOf([at(0, 0, 0, 0)], 'similar')).toMatchObject({ code: 'too-few-points' });
    expect(codeOf([at(5, 5, 0, 0), at(5, 5, 9, 9)], 'similar')).toMatchObject({
      code: 'points-in-one-place',
    });
    expect(codeOf([at(5, 5, 1, 1), at(9, 5, 1, 1)], 'similar')).toMatchObject({
      code: 'points-in-one-place',
    });
    expect(codeOf([at(0, 0, 0, 0), at(50, 50, 5, 5), at(100, 101, 10, 10)], 'affine')).toMatchObject({
      code: 'points-in-line',
    });
    expect(codeOf([at(0, 0, 0, 0), at(100, 0, 0, 10), at(0, 100, 10, 0)], 'affine')).toMatchObject({
      code: 'points-mirrored',
    });
  });
});

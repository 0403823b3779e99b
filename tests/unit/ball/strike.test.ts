import { describe, expect, it } from 'vitest';
import { launchFromStrike } from '../../../shared/ball/launchFromStrike.ts';
import { launchVectors } from '../../../shared/ball/launchVectors.ts';
import type { Conditions, Launch, Lie, Strike } from '../../../shared/ball/shot.ts';
import { shotSimulator } from '../../../shared/ball/simulator.ts';
import { inclinedPlane } from '../../../shared/ball/inclinedPlane.ts';
import { SLOT_COUNT } from '../../../shared/ball/slots.ts';

const day: Conditions = { stimpFt: 10, firmness: 0.5, moisture: 'dry', windMps: 0, windFromDeg: 0 };
const wedge: Strike = {
  clubKind: 'lofted',
  loftDeg: 56,
  bounceDeg: 10,
  leanDeg: 3,
  attackDeg: -4,
  faceOpenDeg: 0,
  clubheadMps: 12,
  bearingDeg: 30,
  handed: 'right',
};
const tight: Lie = { cover: 'fairway', quality: 'clean', alongDeg: 0, acrossDeg: 0 };
const struck = (
  strike: Partial<Strike> = {},
  lie: Partial<Lie> = {},
  on: Partial<Conditions> = {},
  contact = 0,
): Launch =>
  launchFromStrike(
    { ...wedge, ...strike },
    { ...tight, ...lie },
    { ...day, ...on },
    { speedFactor: 1, faceDeg: 0, loftDeg: 0, contact },
  );

describe('a strike', () => {
  it('starts along the swing from a level lie with a square face', () => {
    expect(struck().bearingDeg).toBeCloseTo(30, 9);
  });

  it('opened, launches higher and to the right; from above the feet, to the left', () => {
    const open = struck({ faceOpenDeg: 20 });
    expect(open.elevationDeg).toBeGreaterThan(struck().elevationDeg + 3);
    expect(open.bearingDeg).toBeGreaterThan(35);
    expect(struck({}, { acrossDeg: 5 }).bearingDeg).toBeLessThan(28);
  });

  it('loses spin to water, long grass and a ball that sits down', () => {
    const spin = struck().backspinRpm;
    expect(struck({}, {}, { moisture: 'wet' }).backspinRpm).toBeLessThan(0.9 * spin);
    expect(struck({}, { cover: 'heavyRough' }).backspinRpm).toBeLessThan(0.6 * spin);
    expect(struck({}, { quality: 'sittingDown' }).backspinRpm).toBeLessThan(spin);
  });

  it('forgives a heavy strike where bounce carries it through soft ground', () => {
    const soft = { firmness: 0.1 };
    const loss = (bounceDeg: number): number =>
      struck({ bounceDeg }, {}, soft, -0.6).speedMps / struck({ bounceDeg }, {}, soft).speedMps;
    expect(loss(14)).toBeGreaterThan(loss(4) + 0.1);
  });

  it('skips a heavy strike off firm ground into the ball: there little bounce forgives more', () => {
    const lost = (bounceDeg: number, firmness: number): number =>
      struck({ bounceDeg }, {}, { firmness }).elevationDeg -
      struck({ bounceDeg }, {}, { firmness }, -0.6).elevationDeg;
    expect(lost(14, 0.95)).toBeGreaterThan(lost(4, 0.95) + 3);
    expect(lost(14, 0.95)).toBeGreaterThan(lost(14, 0.1) + 3);
    // Opening the face shows more bounce: soft ground forgives it more.
    const kept = (faceOpenDeg: number): number =>
      struck({ bounceDeg: 6, faceOpenDeg }, {}, { firmness: 0.1 }, -0.6).speedMps /
      struck({ bounceDeg: 6, faceOpenDeg }, {}, { firmness: 0.1 }).speedMps;
    expect(kept(20)).toBeGreaterThan(kept(0) + 0.05);
  });

  it('from a sidehill lie turns by loft: hardly at all with a putter, most with the most loft', () => {
    const turn = (loftDeg: number): number =>
      30 - struck({ loftDeg, leanDeg: 0, attackDeg: 0 }, { acrossDeg: 5 }).bearingDeg;
    expect(turn(3)).toBeLessThan(0.4);
    expect(turn(30)).toBeGreaterThan(turn(3) + 1);
    expect(turn(58)).toBeGreaterThan(turn(30) + 1);
    // Never more than the face itself: tan(turn) = tan(loft) sin(slope).
    const face = (Math.atan(Math.tan((58 * Math.PI) / 180) * Math.sin((5 * Math.PI) / 180)) * 180) / Math.PI;
    expect(turn(58)).toBeLessThan(face);
    const below = struck({ loftDeg: 58, leanDeg: 0, attackDeg: 0 }, { acrossDeg: -5 }).bearingDeg - 30;
    expect(below).toBeCloseTo(turn(58), 9);
  });

  it('topped, comes out low', () => {
    expect(struck({}, {}, {}, 1).elevationDeg).toBeLessThan(15);
  });

  it('comes out of sand within the spans that are told', () => {
    for (const firmness of [0, 0.5, 1]) {
      const out = struck({ leanDeg: 0, faceOpenDeg: 15, clubheadMps: 20 }, { cover: 'bunker' }, { firmness });
      expect(out.speedMps / 20).toBeGreaterThanOrEqual(0.35);
      expect(out.speedMps / 20).toBeLessThanOrEqual(0.45);
      expect(out.elevationDeg).toBeGreaterThan(40);
      expect(out.elevationDeg).toBeLessThan(52);
      expect(out.backspinRpm).toBeGreaterThan(1000);
      expect(out.backspinRpm).toBeLessThan(3500);
    }
    expect(struck({}, { cover: 'bunker', quality: 'buried' }).elevationDeg).toBeLessThan(
      struck({}, { cover: 'bunker' }).elevationDeg,
    );
  });

  it('leaves a buried lie slower, lower and with less spin than a clean one, within the assumed spans', () => {
    const square = { leanDeg: 3, attackDeg: -9, clubheadMps: 30 };
    for (const firmness of [0, 0.5, 1]) {
      const clean = struck({ ...square, faceOpenDeg: 12 }, { cover: 'bunker' }, { firmness });
      const buried = struck(square, { cover: 'bunker', quality: 'buried' }, { firmness });
      expect(buried.speedMps / 30).toBeGreaterThan(0.26);
      expect(buried.speedMps / 30).toBeLessThan(0.35);
      expect(buried.elevationDeg).toBeGreaterThan(33);
      expect(buried.elevationDeg).toBeLessThan(40);
      expect(buried.speedMps).toBeLessThan(0.85 * clean.speedMps);
      expect(buried.elevationDeg).toBeLessThan(clean.elevationDeg - 5);
      expect(buried.backspinRpm).toBeLessThan(0.3 * clean.backspinRpm);
    }
  });

  it('gets far out of sand by meeting the ball first, and pays for every grain before it', () => {
    const sand = { cover: 'bunker' } as const;
    const splash = struck({ clubheadMps: 20 }, sand);
    const clean = struck({ clubheadMps: 20, ballFirst: true }, sand);
    const turf = struck({ clubheadMps: 20 });
    expect(clean.speedMps).toBeGreaterThan(2 * splash.speedMps);
    expect(clean.backspinRpm).toBeLessThan(0.9 * turf.backspinRpm);
    const kept = (contact: number, lie: Partial<Lie>): number =>
      struck({ ballFirst: true }, lie, {}, contact).speedMps / struck({ ballFirst: true }, lie).speedMps;
    expect(kept(-0.25, sand)).toBeLessThan(0.7);
    expect(kept(-0.25, sand)).toBeLessThan(kept(-0.25, {}) - 0.15);
    expect(kept(-1, sand)).toBeLessThan(0.35);
  });
});

describe('covers and outcomes', () => {
  it('stops dead in soft sand, ends in water and out of bounds, and bounces on from a path', () => {
    const launch = struck({ bearingDeg: 0 });
    const on = (cover: Lie['cover'], firmness = 0.5) =>
      shotSimulator(inclinedPlane(0, 0, cover), { ...day, firmness }, null).trace(0, 0, launch).result;
    expect(on('bunker', 0.2).runM).toBeLessThan(0.5);
    expect(on('penaltyArea').outcome).toBe('penaltyArea');
    expect(on('outOfBounds').outcome).toBe('outOfBounds');
    expect(on('path').runM).toBeGreaterThan(on('green').runM + 1);
    expect(on('heavyRough').runM).toBeLessThan(on('lightRough').runM);
  });

  it('traces the very shot that it runs', () => {
    const launch = struck({ bearingDeg: 0 });
    const simulator = shotSimulator(inclinedPlane(2, 90, 'green'), day, null);
    const { result, path } = simulator.trace(0, 0, launch);
    const v = new Float64Array(6);
    const out = new Float64Array(SLOT_COUNT);
    launchVectors(launch, v);
    simulator.run(0, 0, v, out);
    expect(result.rest).toEqual({ eastM: out[0], northM: out[1] });
    expect(path.touchdowns).toHaveLength(result.bounces);
    const points = path.pointsM;
    expect([points.at(-3), points.at(-2)]).toEqual([out[0], out[1]]);
    const first = path.touchdowns[0] ?? 0;
    expect(points[3 * first]).toBeCloseTo(result.landing.eastM, 3);
  });

  it('is stopped by a crown in its way', () => {
    const plane = inclinedPlane(0, 0, 'green');
    const crown = {
      kind: 'tree' as const,
      name: 'oak',
      ringM: Float64Array.of(-3, 4, 3, 4, 3, 7, -3, 7),
      bottomM: 0.5,
      topM: 9,
    };
    const launch = struck({ bearingDeg: 0 });
    const free = shotSimulator(plane, day, null).trace(0, 0, launch).result;
    const barred = shotSimulator({ ...plane, maxHeightM: 0, obstacles: [crown] }, day, null).trace(
      0,
      0,
      launch,
    ).result;
    expect(free.struckObstacle).toBe(false);
    expect(barred.struckObstacle).toBe(true);
    expect(barred.carryM).toBeLessThan(free.carryM);
  });
});

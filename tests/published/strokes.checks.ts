import { greenMap } from '../../shared/planner/greenMap.ts';
import { puttRoller } from '../../shared/planner/puttRoller.ts';
import type { PlayerLevel } from '../../shared/atlas/records.ts';
import { puttingErrors, type PuttingErrors } from '../../shared/player/puttingSpread.ts';
import { levelDay, tiltedGround } from './fit/puttingGround.ts';
import { slopeChance } from './fit/slopePutts.ts';
import { TOUR_PUTTS } from './fit/tourPutts.ts';
import type { CheckGroup, CheckRow } from './row.ts';

const FOOT_M = 0.3048;

const mapOf = (slopePct: number, puttsPerNode: number, of: PlayerLevel = { kind: 'tour' }) => {
  const flag = { eastM: 0, northM: 0 };
  const ground = tiltedGround(slopePct);
  return greenMap({
    ground,
    roller: puttRoller(ground, levelDay, flag),
    flag,
    conditions: levelDay,
    level: of,
    puttsPerNode,
  });
};

const group: CheckGroup = {
  title: 'Strokes to hole out on the green',
  measure: () => {
    const level = mapOf(0, 32);
    const source = 'Broadie (2012, 2014): percentages found (golfingfocus.com), expected putts recalled';
    const rows: CheckRow[] = [];
    for (const [feet, pct, putts] of TOUR_PUTTS) {
      rows.push(
        {
          quantity: `one-putts from ${String(feet)} ft, tour, level green`,
          source,
          mark: 'found',
          expected: pct,
          ours: 100 * level.makeAt(0, feet * FOOT_M),
          tolerance: 1.5,
          unit: '%',
          fittedHere: true,
        },
        {
          quantity: `expected putts from ${String(feet)} ft, tour, level green`,
          source,
          mark: 'from memory',
          expected: putts,
          ours: level.strokesAt(0, feet * FOOT_M),
          tolerance: 0.02,
          unit: 'strokes',
          fittedHere: true,
        },
      );
    }
    // One-putts, points: downhill less uphill on 3 %.
    const downLessUp = (errors: PuttingErrors): number =>
      100 * (slopeChance(errors, 3, 3 * FOOT_M, 0) - slopeChance(errors, 3, 3 * FOOT_M, 180));
    rows.push({
      quantity: 'downhill less uphill 3 ft putt on a 3 % slope, one-putts, with nothing read wrong',
      source:
        'Penner (2002), The physics of putting: a mis-directed ball curves back to the line when it runs downhill',
      mark: 'from memory',
      expected: [0, 100],
      ours: downLessUp({ strokeLineDeg: 1.3, strokeSpeed: 0.045, readAlong: 0, readAcross: 0, readPace: 0 }),
      tolerance: 0,
      unit: 'points',
      note: 'His result holds for errors of the stroke alone; here those are as wide as all errors of a tour player on the level.',
    });
    for (const [name, of] of [
      ['tour', { kind: 'tour' }],
      ['90s golfer', { kind: 'handicap', handicap: 18 }],
    ] as const) {
      const tilted = mapOf(3, 32, of);
      for (const feet of [3, 6]) {
        rows.push({
          quantity: `downhill less uphill ${String(feet)} ft putt on a 3 % slope, expected putts with what a miss leaves, ${name}`,
          source: 'coaching lore: leave the ball below the hole, the putt down costs more',
          mark: 'common practice',
          expected: [0, 0.3],
          ours: tilted.strokesAt(0, feet * FOOT_M) - tilted.strokesAt(0, -feet * FOOT_M),
          tolerance: 0,
          unit: 'strokes',
          note: 'Not fitted: it follows from how much of the error on the level is reading.',
        });
      }
    }
    const errors = puttingErrors({ kind: 'tour' });
    for (const [feet, pct] of TOUR_PUTTS.filter(([length]) => [3, 6, 10, 20].includes(length))) {
      const around = [0, 45, 90, 135, 180].map((bearing) => slopeChance(errors, 1.5, feet * FOOT_M, bearing));
      const [down = 0, half = 0, across = 0, late = 0, up = 0] = around;
      rows.push({
        quantity: `one-putts from ${String(feet)} ft, tour, mean round a hole on a 1.5 % slope`,
        source,
        mark: 'found',
        expected: pct,
        ours: (100 * (down + up + 2 * (half + across + late))) / 8,
        tolerance: 3,
        unit: '%',
        note: 'Tour averages hold every slope, the fit is on the level; a mean slope of 1.5 % is assumed.',
      });
    }
    return rows;
  },
};
export default group;

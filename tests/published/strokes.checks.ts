import { greenMap } from '../../shared/planner/greenMap.ts';
import { puttRoller } from '../../shared/planner/puttRoller.ts';
import { levelDay, tiltedGround } from './fit/puttingGround.ts';
import { TOUR_PUTTS } from './fit/tourPutts.ts';
import type { CheckGroup, CheckRow } from './row.ts';

const FOOT_M = 0.3048;

const mapOf = (slopePct: number, puttsPerNode: number) => {
  const flag = { eastM: 0, northM: 0 };
  const ground = tiltedGround(slopePct);
  return greenMap({
    ground,
    roller: puttRoller(ground, levelDay, flag),
    flag,
    conditions: levelDay,
    level: { kind: 'tour' },
    puttsPerNode,
    seed: 1,
  });
};

const group: CheckGroup = {
  title: 'Strokes to hole out on the green',
  measure: () => {
    const level = mapOf(0, 32);
    const tilted = mapOf(3, 32);
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
    rows.push({
      quantity: 'downhill against uphill 3 ft putt on a 3 % slope, one-putts',
      source:
        'Penner (2002), The physics of putting: a mis-directed ball curves back to the line when it runs downhill',
      mark: 'from memory',
      expected: [0, 100],
      ours: 100 * (tilted.makeAt(0, 3 * FOOT_M) - tilted.makeAt(0, -3 * FOOT_M)),
      tolerance: 0,
      unit: 'points',
      note: 'On the fall line the spread of line and pace is the same up and down; misread slope is not modelled apart.',
    });
    for (const feet of [3, 6]) {
      rows.push({
        quantity: `downhill less uphill ${String(feet)} ft putt on a 3 % slope, expected putts with what a miss leaves`,
        source: 'coaching lore: leave the ball below the hole, the putt down costs more',
        mark: 'common practice',
        expected: [0, 0.2],
        ours: tilted.strokesAt(0, feet * FOOT_M) - tilted.strokesAt(0, -feet * FOOT_M),
        tolerance: 0,
        unit: 'strokes',
        misfit:
          'An error of pace is a share of the start speed, so it costs the same share of the way up and down, and a ball rolling down is turned back to the line. A misread slope or green speed, which weighs more on the way down, is not modelled apart.',
      });
    }
    return rows;
  },
};
export default group;

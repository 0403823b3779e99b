import type { EffortRules } from './effort.ts';
import { aimAt, bestNear, type Move, type Origin } from './bestNear.ts';
import type { Aim } from './solveAim.ts';
import { type StrikeCloud, strikeCloud } from './strikeCloud.ts';
import type { StrokesField } from './strokesField.ts';

type SearchRules = Pick<EffortRules, 'lookShots' | 'walkShots' | 'settleShots'>;

/** An option on the way to its aim. */
export interface Sought {
  readonly origin: Origin;
  /** Every shot so far. */
  readonly cloud: StrikeCloud;
  readonly move: Move;
  /** Expected of the aim as moved. */
  readonly strokes: number;
}

/** How much wider than the player's the spread of speed and line is where a better aim is looked for. */
const WIDTH = 1.5;
/** How far an aim walks, and how far it still moves when it settles. */
const WALK = 4;
const SETTLE = 1.5;
const UNMOVED: Move = { beyondM: 0, rightM: 0 };

/** Rows of the table of shots that a search takes. */
export const searchRows = ({ lookShots, walkShots, settleShots }: SearchRules): number =>
  lookShots + walkShots + 2 * settleShots;

/**
 * The search of one option for the aim of fewest expected strokes: past the hole, short of it or away from trouble. Every
 * stage takes rows of the same table of shots, so that options share their luck, and each adds to what the next is told by.
 */
export function seekAim(
  field: StrokesField,
  shots: Float64Array,
  rules: SearchRules,
): {
  /** A first look at the aim as solved. */
  readonly look: (origin: Origin) => Sought;
  /** Moves it as far as shots spread wider tell of. */
  readonly walk: (sought: Sought) => Sought;
  /** The same aim with more shots behind it, */
  readonly firm: (sought: Sought) => Sought;
  /** and moved a last time, with as many spread wider. */
  readonly settle: (sought: Sought) => Sought;
} {
  const { lookShots, walkShots, settleShots } = rules;
  const firmFrom = lookShots + walkShots;
  const settleFrom = firmFrom + settleShots;
  const at = (sought: Omit<Sought, 'strokes'>): Sought => ({
    ...sought,
    strokes: sought.cloud.at(aimOf(sought)),
  });
  return {
    look(origin) {
      const cloud = strikeCloud(origin.shooter, field, searchRows(rules));
      cloud.shoot(origin.solved, shots, 0, lookShots, 1);
      return at({ origin, cloud, move: UNMOVED });
    },
    walk(sought) {
      const { origin, cloud, move } = sought;
      cloud.shoot(aimOf(sought), shots, lookShots, firmFrom, WIDTH);
      return at({ ...sought, move: bestNear(origin, cloud, move, WALK) });
    },
    firm(sought) {
      sought.cloud.shoot(aimOf(sought), shots, firmFrom, settleFrom, 1);
      return at(sought);
    },
    settle(sought) {
      const { origin, cloud, move } = sought;
      cloud.shoot(aimOf(sought), shots, settleFrom, settleFrom + settleShots, WIDTH);
      return at({ ...sought, move: bestNear(origin, cloud, move, SETTLE) });
    },
  };
}

export const aimOf = ({ origin, move }: Pick<Sought, 'origin' | 'move'>): Aim => aimAt(origin, move);

/** All stages for one option that is to be played whatever the others cost. */
export function bestAim(origin: Origin, field: StrokesField, shots: Float64Array, rules: SearchRules): Aim {
  const { look, walk, firm, settle } = seekAim(field, shots, rules);
  return aimOf(settle(firm(walk(look(origin)))));
}

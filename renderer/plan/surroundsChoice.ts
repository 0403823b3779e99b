import type { SurroundsLayer } from '../../shared/plate/surroundsClasses.ts';

/** What the plate shows of the ground: its slopes, or what it takes to play from anywhere to one flag or to all. */
export interface SurroundsChoice {
  readonly by: 'off' | SurroundsLayer['by'];
  readonly over: 'flag' | 'every';
}

export const surroundsOff: SurroundsChoice = { by: 'off', over: 'flag' };

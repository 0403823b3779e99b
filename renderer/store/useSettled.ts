import { useStore } from 'zustand';
import { useShallow } from 'zustand/react/shallow';
import { type Derived, derivedStore } from './planStore.ts';

/** All but how far the work under way is. */
export type Settled = Omit<Derived, 'progress' | 'switchShare'>;

/** Equal from one share to the next, and so is then the whole. */
const noShares = { progress: null, switchShare: null };

/** What is worked out; a screen that reads it is not made again for every share of work done. */
export function useSettled(): Settled {
  return useStore(
    derivedStore,
    useShallow((now: Derived): Settled => ({ ...now, ...noShares })),
  );
}

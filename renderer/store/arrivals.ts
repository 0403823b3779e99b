import { createStore } from 'zustand/vanilla';
import type { FormatsSource } from '../workers/formatsChannel.ts';
import { openDialog } from './dialogs.ts';

/** Files that were dropped or chosen and wait to be looked at. */
export const arrivalStore = createStore<{ readonly waiting: readonly FormatsSource[] }>(() => ({
  waiting: [],
}));

/** Shows what files would bring in; nothing is changed by that. */
export function bringIn(sources: readonly FormatsSource[]): void {
  arrivalStore.setState({ waiting: [...arrivalStore.getState().waiting, ...sources] });
  openDialog('bringIn');
}

/** Hands the waiting files over, once. */
export function takeArrivals(): readonly FormatsSource[] {
  const { waiting } = arrivalStore.getState();
  if (waiting.length > 0) arrivalStore.setState({ waiting: [] });
  return waiting;
}

import { createStore } from 'zustand/vanilla';
import type { ImportOptions, ImportSelection } from '../../shared/formats/import/importPreview.ts';
import type { FormatsSource } from '../workers/formatsChannel.ts';
import { openDialog } from './dialogs.ts';

/** A file on its way in, with what has been said about it already. */
export interface Arrival {
  readonly source: FormatsSource;
  readonly options?: Omit<ImportOptions, 'progress'>;
  readonly selection?: ImportSelection;
}

/** Files that were dropped or chosen, or set aside for something that has to come first, and wait to be looked at. */
export const arrivalStore = createStore<{ readonly waiting: readonly Arrival[] }>(() => ({
  waiting: [],
}));

/** Shows what files would bring in; nothing is changed by that. */
export function bringIn(sources: readonly FormatsSource[]): void {
  const arrived = sources.map((source) => ({ source }));
  arrivalStore.setState({ waiting: [...arrivalStore.getState().waiting, ...arrived] });
  openDialog('bringIn');
}

/** Places the atlas first; the files come back to be looked at once that is done or given up. */
export function placeFirst(files: readonly Arrival[]): void {
  arrivalStore.setState({ waiting: files });
  openDialog('place');
}

/** Hands the waiting files over, once. */
export function takeArrivals(): readonly Arrival[] {
  const { waiting } = arrivalStore.getState();
  if (waiting.length > 0) arrivalStore.setState({ waiting: [] });
  return waiting;
}

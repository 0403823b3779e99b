import { createStore } from 'zustand/vanilla';
import { commit, currentState, type History, historyOf, redo, undo } from '../../shared/atlas/history.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { JournalState } from '../library/library.ts';

/** The atlas in the window. */
export interface OpenAtlas {
  readonly id: string;
  readonly history: History<AtlasDocument>;
  /** How many steps of the library's journal are in force. */
  readonly inForce: number;
  readonly fileName: string | null;
  /** The host's token for saving to the same place; unknown after a reload. */
  readonly fileHandle: string | null;
  /** What the file holds; null where no file has been written. */
  readonly inFile: AtlasDocument | null;
  /** When the last step reached the library, ms since 1970. */
  readonly keptAt: number | null;
  /** Why it cannot be changed; null where it can. */
  readonly readOnly: string | null;
}

export const atlasStore = createStore<{ readonly open: OpenAtlas | null }>(() => ({ open: null }));

/** How many steps are on their way to the library; none when everything is kept. */
export const writingStore = createStore<{ readonly count: number }>(() => ({ count: 0 }));

/** The document as it stands. */
export const documentOfAtlas = (open: OpenAtlas): AtlasDocument => currentState(open.history);

/** The history a journal tells: its first document, then its steps, of which the first `inForce` count. */
export function historyFrom(
  first: AtlasDocument,
  steps: readonly JournalState[],
  inForce: number,
): History<AtlasDocument> {
  let history = historyOf(first);
  for (const { document, label } of steps) history = commit(history, document, label);
  for (let i = steps.length; i > inForce; i -= 1) history = undo(history);
  return history;
}

/** With one more step; steps undone before it are gone. Returns the same atlas where nothing changed. */
export function withStep(open: OpenAtlas, annotation: string, document: AtlasDocument): OpenAtlas {
  if (document === documentOfAtlas(open)) return open;
  return { ...open, history: commit(open.history, document, annotation), inForce: open.inForce + 1 };
}

/** One step back or on; the same atlas where there is none. */
export function stepped(open: OpenAtlas, by: -1 | 1): OpenAtlas {
  const history = by === -1 ? undo(open.history) : redo(open.history);
  return history === open.history ? open : { ...open, history, inForce: open.inForce + by };
}

/** The count of journal steps at which a state of the history stood, or null where it is not in it. */
export function stepsAt({ history, inForce }: OpenAtlas, document: AtlasDocument | null): number | null {
  const states = [...history.past, history.present, ...history.future];
  const index = states.findIndex(({ state }) => state === document);
  return index < 0 ? null : index + inForce - history.past.length;
}

/** Counts a step as under way until it is kept or has failed. */
export function writing<T>(work: Promise<T>): Promise<T> {
  const count = (by: 1 | -1): void => writingStore.setState({ count: writingStore.getState().count + by });
  count(1);
  return work.finally(() => count(-1));
}

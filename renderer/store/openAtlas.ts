import { createStore } from 'zustand/vanilla';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { JournalState } from '../library/library.ts';

/** The atlas in the window: a first document and the steps made since, of which the first `inForce` count. */
export interface OpenAtlas {
  readonly id: string;
  readonly base: AtlasDocument;
  readonly steps: readonly JournalState[];
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

/** The document as it stands. */
export function documentOfAtlas(open: OpenAtlas): AtlasDocument {
  return open.inForce === 0 ? open.base : (open.steps[open.inForce - 1]?.document ?? open.base);
}

/** What undo would take back, or null. */
export const undoLabel = (open: OpenAtlas): string | null => open.steps[open.inForce - 1]?.label ?? null;

/** What redo would do again, or null. */
export const redoLabel = (open: OpenAtlas): string | null => open.steps[open.inForce]?.label ?? null;

/** With one more step; steps undone before it are gone. Returns the same atlas where nothing changed. */
export function withStep(open: OpenAtlas, label: string, document: AtlasDocument): OpenAtlas {
  if (document === documentOfAtlas(open)) return open;
  return {
    ...open,
    steps: [...open.steps.slice(0, open.inForce), { label, document }],
    inForce: open.inForce + 1,
  };
}

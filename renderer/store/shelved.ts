import { changeHeader } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { JournalState, Library, ShelvedAtlas } from '../library/library.ts';
import { firstSession } from './session.ts';

/** The document after so many steps of a journal; null where there are not so many. */
export const stateAt = (
  base: AtlasDocument,
  steps: readonly JournalState[],
  count: number,
): AtlasDocument | null => (count === 0 ? base : (steps[count - 1]?.document ?? null));

const stateInForce = ({ shelf, base, steps }: ShelvedAtlas): AtlasDocument | null =>
  stateAt(base, steps, Math.min(shelf.stepsInForce, steps.length));

/** An atlas of the library as it stands; null where it is not there. */
export async function documentOnShelf(library: Library, id: string): Promise<AtlasDocument | null> {
  const shelved = await library.load(id);
  return shelved === null ? null : stateInForce(shelved);
}

export const namedAtlas = (name: string): ReturnType<typeof changeHeader> =>
  changeHeader(`named the atlas ${name}`, { name });

/** Names an atlas that is not open: a step of its journal like any other. */
export async function nameShelved(library: Library, id: string, name: string, now: number): Promise<void> {
  const shelved = await library.load(id);
  const before = shelved === null ? null : stateInForce(shelved);
  if (shelved === null || before === null) return;
  const { annotation, apply } = namedAtlas(name);
  await library.append(id, shelved.shelf.stepsInForce, annotation, before, apply(before), now);
}

/** Puts a copy of an atlas as it stands on the shelf, without its journal and its file. */
export async function copyShelved(library: Library, id: string, now: number): Promise<void> {
  const shelved = await library.load(id);
  const document = shelved === null ? null : stateInForce(shelved);
  if (shelved === null || document === null) return;
  const name = `${shelved.shelf.name}, copy`;
  const copy = {
    id: crypto.randomUUID(),
    name,
    updatedAt: now,
    fileName: null,
    stepsInFile: null,
    session: firstSession,
  };
  await library.add(copy, changeHeader(`copied ${shelved.shelf.name}`, { name }).apply(document));
}

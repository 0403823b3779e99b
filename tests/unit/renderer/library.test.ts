import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterEach, expect, it } from 'vitest';
import { LibraryDatabase } from '../../../renderer/library/database.ts';
import { Library } from '../../../renderer/library/library.ts';
import { libraryProblem } from '../../../renderer/library/libraryProblem.ts';
import { documentOf } from '../../../shared/atlas/documentChanges.ts';
import { sameDocument } from '../../../shared/atlas/document.ts';
import type { AtlasDocument, AtlasRecord } from '../../../shared/atlas/records.ts';
import { lonLat } from '../../../shared/geometry/points.ts';

const header: AtlasRecord = {
  type: 'atlas',
  id: 'atlas',
  name: 'Test',
  kind: 'course',
  placed: false,
  anchor: lonLat(0, 50),
  note: '',
};
const spot = (id: string, heightM: number): AtlasRecord => ({
  type: 'spotHeight',
  id,
  at: lonLat(0, 50),
  heightM,
  accuracyM: 0.01,
});
const shelf = (id: string) => ({
  id,
  name: 'Test',
  updatedAt: 1,
  fileName: null,
  stepsInFile: null,
  session: null,
});

let databases = 0;
const open: LibraryDatabase[] = [];
function database(name?: string): LibraryDatabase {
  databases += 1;
  const made = new LibraryDatabase(name ?? `test-${databases}`);
  open.push(made);
  return made;
}
afterEach(() => {
  for (const one of open.splice(0)) one.close();
});

/** What the window would show after a reload: the state in force. */
async function reload(name: string, id: string): Promise<AtlasDocument> {
  const shelved = await new Library(database(name)).load(id);
  if (shelved === null) throw new Error('nothing on the shelf');
  const { stepsInForce } = shelved.shelf;
  return stepsInForce === 0 ? shelved.base : (shelved.steps[stepsInForce - 1]?.document ?? shelved.base);
}

it('gives back the state in force after any run of edits, undos and redos', async () => {
  const action = fc.oneof(
    fc.record({
      kind: fc.constant('put' as const),
      id: fc.constantFrom('a', 'b', 'c'),
      heightM: fc.integer(),
    }),
    fc.record({ kind: fc.constant('remove' as const), id: fc.constantFrom('a', 'b', 'c') }),
    fc.record({ kind: fc.constantFrom('undo' as const, 'redo' as const) }),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(action, { maxLength: 14 }), async (actions) => {
      const name = `test-${(databases += 1)}`;
      const library = new Library(database(name));
      let states = [documentOf([header, spot('a', 1)])];
      let inForce = 0;
      const now = (): AtlasDocument => states[inForce] ?? documentOf([]);
      await library.add(shelf('x'), now());
      for (const one of actions) {
        if (!('id' in one)) {
          const to = inForce + (one.kind === 'undo' ? -1 : 1);
          if (to < 0 || to >= states.length) continue;
          inForce = to;
          await library.moveTo('x', inForce, 2);
          continue;
        }
        const records = new Map(now().records);
        if (one.kind === 'put') records.set(one.id, spot(one.id, one.heightM));
        else records.delete(one.id);
        const before = now();
        states = [...states.slice(0, inForce + 1), { records }];
        await library.append('x', inForce, one.kind, before, { records }, 2);
        inForce += 1;
      }
      expect(sameDocument(await reload(name, 'x'), now())).toBe(true);
    }),
    { numRuns: 25 },
  );
});

it('folds a long journal into its base without changing what is shown', async () => {
  const name = `test-${(databases += 1)}`;
  const library = new Library(database(name));
  let document = documentOf([header, spot('a', 0)]);
  await library.add(shelf('x'), document);
  for (let i = 0; i < 405; i += 1) {
    const next = { records: new Map(document.records).set('a', spot('a', i + 1)) };
    await library.append('x', i, 'set', document, next, i);
    document = next;
  }
  expect(await library.trim('x')).toBe(true);
  const shelved = await library.load('x');
  expect(shelved?.steps).toHaveLength(200);
  expect(shelved?.shelf.stepsInForce).toBe(200);
  expect(sameDocument(await reload(name, 'x'), document)).toBe(true);
  expect(await library.trim('x')).toBe(false);
});

it('removes an atlas with its journal and leaves the others', async () => {
  const library = new Library(database());
  const document = documentOf([header]);
  await library.add(shelf('x'), document);
  await library.add(shelf('y'), document);
  await library.append('x', 0, 'set', document, documentOf([header, spot('a', 1)]), 2);
  await library.takeOff('x');
  expect(await library.load('x')).toBeNull();
  expect((await library.list()).map(({ id }) => id)).toEqual(['y']);
});

it('says what to do when the disk is full, blocked, newer or forbidden', () => {
  const dexieWrapped = Object.assign(new Error('aborted'), {
    name: 'AbortError',
    inner: Object.assign(new Error('full'), { name: 'QuotaExceededError' }),
  });
  const problem = (error: unknown): string => libraryProblem(error).code;
  expect(problem(dexieWrapped)).toBe('library-full');
  expect(libraryProblem(dexieWrapped).remedy).toMatch(/^Save the atlas to a file/);
  expect(problem(Object.assign(new Error(''), { name: 'VersionError' }))).toBe('library-newer');
  expect(problem(Object.assign(new Error(''), { name: 'BlockedError' }))).toBe('library-blocked');
  expect(problem(new Error('SecurityError'))).toBe('library-unavailable');
});

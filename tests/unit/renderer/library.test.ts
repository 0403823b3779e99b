import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterEach, expect, it, vi } from 'vitest';
import { LibraryDatabase } from '../../../renderer/library/database.ts';
import { Library } from '../../../renderer/library/library.ts';
import { SharedDatabase } from '../../../renderer/library/sharedDatabase.ts';
import { libraryProblem } from '../../../renderer/library/libraryProblem.ts';
import { documentOf } from '../../../shared/atlas/documentChanges.ts';
import { recordsOf, sameDocument } from '../../../shared/atlas/document.ts';
import type { AtlasDocument, AtlasRecord } from '../../../shared/atlas/records.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import type { InputProblem } from '../../../shared/words/inputProblem.ts';

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
  const library = new Library(database(name), 40);
  let document = documentOf([header, spot('a', 0)]);
  await library.add(shelf('x'), document);
  for (let i = 0; i < 45; i += 1) {
    const next = { records: new Map(document.records).set('a', spot('a', i + 1)) };
    await library.append('x', i, 'set', document, next, i);
    document = next;
  }
  expect(await library.trim('x')).toBe(true);
  const shelved = await library.load('x');
  expect(shelved?.steps).toHaveLength(20);
  expect(shelved?.shelf.stepsInForce).toBe(20);
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
  expect(problem(new Error('SecurityError'))).toBe('library-unavailable');
});

/** The library as a version to come will have it. */
class LaterDatabase extends LibraryDatabase {
  constructor(name: string) {
    super(name);
    this.version(3).stores({ atlases: 'id, updatedAt, name' });
    open.push(this);
  }
}

/** The library as it was before a pick belonged to a player. */
class EarlierDatabase extends SharedDatabase {
  constructor(name: string) {
    super(name);
    this.version(1).stores({
      atlases: 'id, updatedAt',
      bases: 'atlasId',
      steps: '[atlasId+index]',
      kept: 'key',
    });
  }
}

it('gives the picks of an older library to whoever was in use when they were made', async () => {
  const name = `test-${(databases += 1)}`;
  const earlier = new EarlierDatabase(name);
  const player = (id: string, inUse: boolean) => ({ type: 'player', id, inUse });
  const pick = (id: string) => ({
    type: 'choice',
    id,
    ballId: 'b',
    flagId: 'f',
    optionId: 'chip:w',
    note: '',
  });
  await earlier.table('atlases').put({ ...shelf('x'), stepsInForce: 2 });
  await earlier.table('bases').bulkPut([
    { atlasId: 'x', records: [header, player('p', true), player('q', false), pick('in-base')] },
    { atlasId: 'nobody', records: [header, pick('lost')] },
  ]);
  const changes = (...records: { readonly id: string }[]) =>
    records.map((record) => ({ id: record.id, record }));
  await earlier.table('steps').bulkPut([
    { atlasId: 'x', index: 0, label: 'a', at: 1, changes: changes(pick('of-p')) },
    { atlasId: 'x', index: 1, label: 'b', at: 1, changes: changes(player('p', false), player('q', true)) },
    { atlasId: 'x', index: 2, label: 'c', at: 1, changes: changes(pick('of-q')) },
  ]);
  earlier.close();
  const raised = await new Library(database(name)).load('x');
  const picks = recordsOf(raised?.steps[2]?.document ?? documentOf([]), 'choice');
  expect(picks.map(({ id, playerId }) => [id, playerId])).toEqual([
    ['in-base', 'p'],
    ['of-p', 'p'],
    ['of-q', 'q'],
  ]);
  expect(raised?.shelf.stepsInForce).toBe(2);
});

const watched = (library: Library) => {
  const told: string[] = [];
  library.watch({
    waits: (problem: InputProblem | null) => told.push(problem === null ? 'goes on' : problem.code),
    lost: ({ code }: InputProblem) => told.push(code),
  });
  return told;
};

it('writes what it has in hand and lets go when a newer window needs the library', async () => {
  const name = `test-${(databases += 1)}`;
  const old = new Library(database(name));
  const told = watched(old);
  const document = documentOf([header]);
  const drawn = documentOf([header, spot('a', 1)]);
  await old.add(shelf('x'), document);
  const step = old.append('x', 0, 'drew', document, drawn, 2);
  const later = new Library(new LaterDatabase(name));
  const toldLater = watched(later);
  const shelved = await later.load('x');
  await step;
  expect(shelved?.steps.map(({ label }) => label)).toEqual(['drew']);
  expect(told).toEqual(['goes on', 'library-taken-over']);
  expect(toldLater).toEqual(['goes on']);
  // It cannot write in a shape it does not know, and says why; nor can an old window opened afterwards.
  await expect(old.append('x', 1, 'more', drawn, document, 3)).rejects.toMatchObject({
    code: 'library-taken-over',
  });
  await expect(new Library(database(name)).list()).rejects.toMatchObject({ code: 'library-newer' });
  expect((await later.load('x'))?.steps).toHaveLength(1);
});

it('tells a newer window to have the older one closed, and goes on by itself', async () => {
  const name = `test-${(databases += 1)}`;
  await new Library(database(name)).add(shelf('x'), documentOf([header]));
  for (const one of open.splice(0)) one.close();
  // A window that hangs: it never answers.
  const hanging = await new Promise<IDBDatabase>((done, failed) => {
    const request = indexedDB.open(name);
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(new Error('not opened'));
  });
  const later = new Library(new LaterDatabase(name));
  const told = watched(later);
  const shelved = later.load('x');
  await expect.poll(() => told).toEqual(['library-blocked']);
  hanging.close();
  expect((await shelved)?.shelf.id).toBe('x');
  expect(told).toEqual(['library-blocked', 'goes on']);
});

it('keeps all that was stored when the disk is full, and writes what is owed once there is room', async () => {
  const name = `test-${(databases += 1)}`;
  const library = new Library(database(name));
  const states = [1, 2, 3, 4].map((heightM) => documentOf([header, spot('a', heightM)]));
  const append = (i: number) =>
    library.append('x', i, 'set', states[i] ?? documentOf([]), states[i + 1] ?? documentOf([]), i);
  await library.add(shelf('x'), states[0] ?? documentOf([]));
  await append(0);
  const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('full', 'QuotaExceededError');
  });
  await expect(append(1)).rejects.toMatchObject({ code: 'library-full' });
  expect(sameDocument(await reload(name, 'x'), states[1] ?? documentOf([]))).toBe(true);
  full.mockRestore();
  await append(2);
  expect(sameDocument(await reload(name, 'x'), states[3] ?? documentOf([]))).toBe(true);
  expect((await library.load('x'))?.steps).toHaveLength(3);
});

it('opens anew what a full disk broke off, and writes what is owed', async () => {
  const name = `test-${(databases += 1)}`;
  const own = database(name);
  const library = new Library(own);
  const states = [1, 2, 3].map((heightM) => documentOf([header, spot('a', heightM)]));
  const append = (i: number) =>
    library.append('x', i, 'set', states[i] ?? documentOf([]), states[i + 1] ?? documentOf([]), i);
  await library.add(shelf('x'), states[0] ?? documentOf([]));
  // As seen on a disk without a byte left: the connection is gone, and the store cannot be opened.
  own.backendDB().close();
  const full = vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(() => {
    throw new DOMException('Internal error opening backing store', 'UnknownError');
  });
  await expect(append(0)).rejects.toMatchObject({ code: 'library-stopped' });
  full.mockRestore();
  await append(1);
  expect(sameDocument(await reload(name, 'x'), states[2] ?? documentOf([]))).toBe(true);
});

import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeEach, expect, it } from 'vitest';
import { LibraryDatabase } from '../../../renderer/library/database.ts';
import { Library } from '../../../renderer/library/library.ts';
import { Desk } from '../../../renderer/store/desk.ts';
import { movePlace } from '../../../renderer/store/edits.ts';
import { noticeStore } from '../../../renderer/store/notices.ts';
import { atlasStore, documentOfAtlas } from '../../../renderer/store/openAtlas.ts';
import { undoAnnotation } from '../../../shared/atlas/history.ts';
import { headerOf, recordsOf } from '../../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import type { Host } from '../../../shared/protocol/host.ts';

const sample = readFileSync(
  resolve(import.meta.dirname, '../../../sample-course/ossel-down.geojson'),
  'utf8',
);

const written: { readonly place: string; readonly text: string }[] = [];
const host: Host = {
  openAtlas: () =>
    Promise.resolve({
      ok: true,
      value: { handle: 't1', fileName: 'cut.geojson', text: sample.slice(0, 900) },
    }),
  saveAtlas: (handle, text) => {
    written.push({ place: handle, text });
    return Promise.resolve({ ok: true, value: null });
  },
  saveAtlasAs: (name, text) => {
    written.push({ place: name, text });
    return Promise.resolve({ ok: true, value: { handle: 'h', fileName: name } });
  },
  keepFile: () => Promise.resolve({ ok: true, value: true }),
  printPlaybook: () => Promise.resolve({ ok: true, value: null }),
  sampleAtlas: () => Promise.resolve({ ok: true, value: sample }),
};

const document = (): AtlasDocument => {
  const { open } = atlasStore.getState();
  if (open === null) throw new Error('nothing is open');
  return documentOfAtlas(open);
};

let names = 0;
beforeEach(() => {
  atlasStore.setState({ open: null });
  noticeStore.setState([], true);
  written.length = 0;
  names += 1;
});

it('opens the sample at first start and what was open at the next, edits and undo included', async () => {
  const name = `desk-${names}`;
  const desk = new Desk(new Library(new LibraryDatabase(name)), host, () => 1);
  await desk.start();
  expect(headerOf(document()).name).toBe('Ossel Down');
  const ball = recordsOf(document(), 'ballPosition')[0];
  if (ball === undefined) throw new Error('the sample has no ball');
  const at = lonLat(-30.0035, 45.0012);
  desk.edit(movePlace(ball, at));
  desk.edit({ annotation: 'nothing', apply: (before) => before });
  await desk.settled();

  atlasStore.setState({ open: null });
  const again = new Desk(new Library(new LibraryDatabase(name)), host, () => 2);
  await again.start();
  expect(document().records.get(ball.id)).toMatchObject({ at });
  const { open } = atlasStore.getState();
  expect(open !== null && undoAnnotation(open.history)).toBe(`moved ball ${ball.label}`);
  again.undo();
  expect(document().records.get(ball.id)).toEqual(ball);
});

it('saves to the place it knows, and asks for one where it knows none', async () => {
  const desk = new Desk(new Library(new LibraryDatabase(`desk-${names}`)), host, () => 1);
  await desk.start();
  await desk.save();
  await desk.save();
  expect(written.map(({ place }) => place)).toEqual(['ossel-down.geojson', 'h']);
  expect(written[0]?.text).toBe(sample);
});

it('keeps the open atlas when a file cannot be read, and says why', async () => {
  const desk = new Desk(new Library(new LibraryDatabase(`desk-${names}`)), host, () => 1);
  await desk.start();
  const before = document();
  await desk.openFile();
  expect(document()).toBe(before);
  expect(noticeStore.getState().map(({ message }) => message)).toEqual([
    expect.stringContaining('cut.geojson'),
  ]);
});

it('works without a library, and says that changes will not last', async () => {
  const broken = new LibraryDatabase(`desk-${names}`);
  broken.close({ disableAutoOpen: true });
  const desk = new Desk(new Library(broken), host, () => 1);
  await desk.start();
  expect(headerOf(document()).name).toBe('Ossel Down');
  expect(noticeStore.getState()[0]?.message).toContain('cannot be used here');
  const ball = recordsOf(document(), 'ballPosition')[0];
  if (ball === undefined) throw new Error('the sample has no ball');
  desk.edit(movePlace(ball, lonLat(-30, 45)));
  expect(document().records.get(ball.id)).toMatchObject({ at: [-30, 45] });
});

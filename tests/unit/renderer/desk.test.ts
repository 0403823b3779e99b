import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeEach, expect, it } from 'vitest';
import { LibraryDatabase } from '../../../renderer/library/database.ts';
import { Library } from '../../../renderer/library/library.ts';
import { PictureDatabase, Pictures } from '../../../renderer/library/pictures.ts';
import { Desk } from '../../../renderer/store/desk.ts';
import { movePlace } from '../../../renderer/store/edits.ts';
import { noticeStore } from '../../../renderer/store/notices.ts';
import { atlasStore, documentOfAtlas } from '../../../renderer/store/openAtlas.ts';
import { FileReading, readingStore } from '../../../renderer/store/readingFile.ts';
import type { FromFormats } from '../../../renderer/workers/formatsChannel.ts';
import { FormatsClient, type FormatsPort } from '../../../renderer/workers/formatsClient.ts';
import { readToOpen } from '../../../renderer/workers/readToOpen.ts';
import { undoAnnotation } from '../../../shared/atlas/history.ts';
import { headerOf, recordsOf, sameDocument } from '../../../shared/atlas/document.ts';
import { putRecords, removeRecords } from '../../../shared/atlas/edits.ts';
import type { AtlasDocument, AtlasRecord } from '../../../shared/atlas/records.ts';
import { readAtlasFile } from '../../../shared/formats/readAtlasFile.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import type { Host, OpenedFile } from '../../../shared/protocol/host.ts';

const sample = readFileSync(
  resolve(import.meta.dirname, '../../../sample-course/ossel-down.geojson'),
  'utf8',
);

const written: { readonly place: string; readonly content: Uint8Array }[] = [];
const cut = { fileName: 'cut.geojson', content: new TextEncoder().encode(sample.slice(0, 900)) };
/** What the person chooses to open. */
let toOpen: Pick<OpenedFile, 'fileName' | 'content'> = cut;
const host: Host = {
  openAtlas: () =>
    Promise.resolve({
      ok: true,
      value: { handle: 't1', ...toOpen },
    }),
  saveAtlas: (handle, content) => {
    written.push({ place: handle, content });
    return Promise.resolve({ ok: true, value: null });
  },
  saveAtlasAs: (name, content) => {
    written.push({ place: name, content });
    return Promise.resolve({ ok: true, value: { handle: 'h', fileName: name } });
  },
  keepFile: () => Promise.resolve({ ok: true, value: true }),
  printPlaybook: () => Promise.resolve({ ok: true, value: null }),
  sampleAtlas: () => Promise.resolve({ ok: true, value: sample }),
  onCommand: () => () => undefined,
};

/** The worker's part, done here: what passes is copied as between threads, and what is wanted no more is not done. */
const reading = (): FileReading =>
  new FileReading(
    new FormatsClient(() => {
      let ended = false;
      const port: FormatsPort = {
        onmessage: null,
        onerror: null,
        terminate: () => (ended = true),
        postMessage: ({ ticket, question }) => {
          if (question.kind !== 'open') throw new Error('not asked here');
          const say = (data: FromFormats): void => {
            if (!ended) port.onmessage?.(new MessageEvent('message', { data: structuredClone(data) }));
          };
          void readToOpen(question, (share) => say({ ticket, share })).then((answer) =>
            say({ ticket, answer }),
          );
        },
      };
      return port;
    }),
  );

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
  toOpen = cut;
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
  expect(new TextDecoder().decode(written[0]?.content)).toBe(sample);
  // An atlas that another window has can be worked on as a copy.
  const { open } = atlasStore.getState();
  if (open === null) throw new Error('nothing is open');
  atlasStore.setState({ open: { ...open, readOnly: 'It is open elsewhere.' } });
  const shown = document();
  desk.edit(removeRecords('took everything out', shown.records.keys()));
  expect(document()).toBe(shown);
  await desk.saveAs();
  expect(atlasStore.getState().open).toMatchObject({ readOnly: null, fileName: 'ossel-down.geojson' });
  expect(atlasStore.getState().open?.id).not.toBe(open.id);
  expect(await desk.atlases()).toHaveLength(2);
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

it('keeps an atlas with pictures in a bundle, asks for its place, and opens it where the pictures are unknown', async () => {
  const pictures = new Pictures(new PictureDatabase(`pictures-${names}`));
  const desk = new Desk(new Library(new LibraryDatabase(`desk-${names}`)), host, () => 1, pictures);
  await desk.start();
  await desk.save();
  const content = Uint8Array.of(0xff, 0xd8, 0xff, 1, 2, 3);
  const sha256 = await pictures.keep(content, 1);
  const laid = (id: string, hash: string): AtlasRecord => ({
    type: 'picture',
    ...{ id, name: 'From above', sha256: hash, mediaType: 'image/jpeg', widthPx: 40, heightPx: 30 },
    corners: [[lonLat(-30, 45), lonLat(-29.999, 45), lonLat(-29.999, 45.001), lonLat(-30, 45.001)]],
    ...{ opacity: 1, shown: true, attribution: '© Flyer', licence: '' },
  });
  desk.edit(putRecords('laid a picture', [laid('p', sha256), laid('q', '0'.repeat(64))]));
  await desk.save();
  await desk.save();
  expect(written.map(({ place }) => place)).toEqual(['ossel-down.geojson', 'ossel-down.zip', 'h']);
  expect(noticeStore.getState().map(({ message }) => message)).toEqual([
    'From above: the file of this picture is not here, so it is not in the bundle.',
  ]);
  const before = document();
  toOpen = { fileName: 'ossel-down.zip', content: written[1]?.content ?? new Uint8Array() };
  const elsewhere = new Pictures(new PictureDatabase(`pictures-${names}-elsewhere`));
  const otherLibrary = new Library(new LibraryDatabase(`desk-${names}-b`));
  const other = new Desk(otherLibrary, host, () => 2, elsewhere, reading());
  await other.openFile();
  expect(sameDocument(document(), before)).toBe(true);
  expect(await elsewhere.load(sha256)).toEqual(content);

  // Away from the window a file is refused in the same words, and given up when another atlas is opened meanwhile.
  const opened = document();
  const large = sample.replace('{', `{${' '.repeat(600_000)}`);
  for (const text of [large.replace('"format": 4', '"format": 99'), large.slice(0, -900)]) {
    noticeStore.setState([], true);
    await other.openDropped(new File([text], 'large.geojson'));
    expect(document()).toBe(opened);
    const said = noticeStore.getState().map(({ message }) => message);
    let why = '';
    try {
      readAtlasFile(text, 'large.geojson');
    } catch (error) {
      if (error instanceof InputProblem) why = error.message;
    }
    expect(said).toEqual([why]);
    expect(why).toMatch(/^large\.geojson/);
  }
  const late = other.openDropped(new File([large], 'large.geojson'));
  await other.startNew();
  await late;
  expect(headerOf(document()).name).not.toBe('Ossel Down');
  expect(readingStore.getState()).toBeNull();
  await other.openDropped(new File([large], 'large.geojson'));
  expect(headerOf(document()).name).toBe('Ossel Down');

  // What nothing names goes in a day; what an atlas shows, or could show again, stays.
  const library = `desk-${names}`;
  const unnamed = await pictures.keep(Uint8Array.of(9, 9), 1);
  desk.edit(removeRecords('took it away', ['p']));
  await desk.settled();
  expect(await pictures.sweep(1000, new LibraryDatabase(library))).toBe(0);
  expect(await pictures.sweep(90_000_000, new LibraryDatabase(library))).toBe(1);
  expect(await pictures.load(unnamed)).toBeNull();
  expect(await pictures.load(sha256)).toEqual(content);
});

// Last, since its desk goes on listening and complaining.
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

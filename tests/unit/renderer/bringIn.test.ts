import { expect, it } from 'vitest';
import { BringIn, comingIn, previewOf } from '../../../renderer/bringin/bringIn.ts';
import { levelEdit, levelWork, withPlace } from '../../../renderer/bringin/levelWork.ts';
import type { PointAsked } from '../../../renderer/store/pointAsked.ts';
import { PointingHand } from '../../../renderer/survey/pointingHand.ts';
import type { FormatsSource, FromFormats, ToFormats } from '../../../renderer/workers/formatsChannel.ts';
import { FormatsClient, type FormatsPort } from '../../../renderer/workers/formatsClient.ts';
import { recordsOf } from '../../../shared/atlas/document.ts';
import { planePoint } from '../../../shared/geometry/points.ts';
import { previewImport } from '../../../shared/formats/import/previewImport.ts';
import { anchor, bytes, emptyAtlas, osmXml, placedAtlas } from '../formats/exchangeFixtures.ts';

/** A worker the test plays itself. */
class Port implements FormatsPort {
  readonly sent: ToFormats[] = [];
  ended = false;
  onmessage: FormatsPort['onmessage'] = null;
  onerror: FormatsPort['onerror'] = null;
  postMessage(message: ToFormats): void {
    this.sent.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(data: FromFormats): void {
    this.onmessage?.(new MessageEvent('message', { data }));
  }
  /** Answers its last question as the real worker would. */
  async answer(text: string): Promise<void> {
    const asked = this.sent.at(-1);
    if (asked?.question.kind !== 'preview') throw new Error('nothing was asked');
    const { document, source, options } = asked.question;
    const preview = await previewImport(
      document,
      { fileName: source.fileName, content: bytes(text) },
      options,
    );
    const answer = { kind: 'preview', format: null, preview, problem: null, csv: null } as const;
    this.say({ ticket: asked.ticket, answer });
  }
}

const source = (fileName: string): FormatsSource => ({ fileName, content: new Blob([]), projection: null });

function setUp(document = emptyAtlas()) {
  const ports: Port[] = [];
  const client = new FormatsClient(() => {
    const port = new Port();
    ports.push(port);
    return port;
  });
  const bringIn = new BringIn(client, document);
  const port = (): Port => {
    const last = ports.at(-1);
    if (last === undefined) throw new Error('no worker was started');
    return last;
  };
  return { bringIn, ports, port };
}

it('reads each file onto what the ones before it leave, and makes one step of all', async () => {
  const empty = emptyAtlas();
  const { bringIn, port } = setUp(empty);
  bringIn.add([{ source: source('course.osm') }, { source: source('points.csv') }], null);
  expect(bringIn.edit()).toBeNull();
  await port().answer(osmXml());
  // Metres are counted from the anchor that the map gave the atlas.
  await port().answer('east,north,height\n1,2,20.5\n');
  const edit = bringIn.edit();
  expect(edit?.annotation).toBe('imported 2 files');
  const after = edit?.apply(empty) ?? empty;
  expect(recordsOf(after, 'spotHeight')).toHaveLength(1);
  expect(recordsOf(after, 'hole')[0]?.label).toBe('7');
  // Another kind for one group reads only the files after it again.
  const [map] = bringIn.store.getState().files;
  if (map === undefined) throw new Error('no file');
  bringIn.setSelection(map.key, { areaKinds: { 'area:bunker': 'bare' }, without: new Set(['area:path']) });
  expect(bringIn.store.getState().files.map(({ reading }) => reading.at)).toEqual(['read', 'reading']);
  await port().answer('east,north,height\n1,2,20.5\n');
  const changed = bringIn.edit()?.apply(empty) ?? empty;
  const kinds = recordsOf(changed, 'area').map(({ kind }) => kind);
  expect([kinds.includes('bunker'), kinds.includes('path'), kinds.includes('bare')]).toEqual([
    false,
    false,
    true,
  ]);
});

it('ends the worker of what is no longer wanted, and hears no late answer', async () => {
  const { bringIn, ports, port } = setUp();
  bringIn.add([{ source: source('course.osm') }], null);
  const first = port();
  bringIn.cancel();
  expect(first.ended).toBe(true);
  await first.answer(osmXml());
  const [file] = bringIn.store.getState().files;
  expect(file?.reading.at).toBe('given up');
  bringIn.again(file?.key ?? 0);
  expect(ports).toHaveLength(2);
  // The atlas changed meanwhile: read anew, by a third worker.
  bringIn.onto(placedAtlas());
  expect(port().sent).toHaveLength(1);
  // Node knows no ErrorEvent; of one only the message is read.
  port().onerror?.(Object.assign(new Event('error'), { message: 'out of memory' }) as ErrorEvent);
  const stopped = bringIn.store.getState().files[0]?.reading;
  expect(stopped?.at === 'read' && stopped.answer.problem?.message).toMatch(/^course\.osm: .*out of memory/);
});

it('gives a lone green to the hole the person is on, unless the file says whose it is', async () => {
  const document = emptyAtlas();
  const hole = {
    type: 'hole',
    id: 'h1',
    label: '1',
    order: 1,
    name: '',
    par: null,
    greenId: null,
    line: null,
  } as const;
  const withHole = { records: new Map([...document.records, ['h1', hole] as const]) };
  const { bringIn, port } = setUp(withHole);
  bringIn.add([{ source: source('course.osm') }], 'h1');
  await port().answer(osmXml());
  const after = bringIn.edit()?.apply(withHole);
  expect(after && recordsOf(after, 'hole').map(({ label, greenId }) => [label, greenId])).toEqual([
    ['1', null],
    ['7', 'osm-w104'],
  ]);
  const [file] = bringIn.store.getState().files;
  if (file === undefined) throw new Error('no file');
  bringIn.setSelection(file.key, { without: new Set(['hole']) });
  const without = bringIn.edit()?.apply(withHole);
  expect(without && recordsOf(without, 'hole')[0]?.greenId).toBe('osm-w104');
  const preview = previewOf(file);
  expect(preview && comingIn(withHole, preview, {})).toBe(7);
});

it('reduces a typed level book, and puts in the points that have a place', () => {
  const document = placedAtlas([{ type: 'landmark', id: 'l', name: 'Drain', at: anchor }]);
  const row = { point: '', back: '', between: '', fore: '', east: '', north: '' };
  const rows = [
    { ...row, point: 'BM', back: '1.5' },
    { ...row, point: 'drain', between: '1.2' },
    { ...row, point: 'P2', fore: '0.9', back: '1.3', east: '3', north: '-2' },
    { ...row, point: 'BM', fore: '1.904' },
    row,
  ];
  const draft = { rows, staff: 'm', firstHeight: '20', lastHeight: '' } as const;
  const work = levelWork(document, 'h4', draft, { system: 'metres', paceM: 0.9 });
  expect(work.loop.misclosureM).toBeCloseTo(-0.004, 9);
  expect(work.unplaced).toEqual(['BM']);
  const after = levelEdit(document, work, () => crypto.randomUUID()).apply(document);
  expect(recordsOf(after, 'spotHeight').map(({ heightM }) => heightM)).toEqual([20.302, 20.602]);
  const slip = { ...draft, rows: rows.map((one) => (one.fore === '1.904' ? { ...one, fore: '1.95' } : one)) };
  expect(() => levelWork(document, 'h4', slip, { system: 'metres', paceM: 0.9 })).toThrow(
    /closes -50 mm out/,
  );
});

it('takes the places of a level book from the map, by pointer and by keys, and leaves those it has', () => {
  const document = placedAtlas([]);
  const hand = new PointingHand();
  const units = { system: 'yards', paceM: 0.9 } as const;
  const told: (readonly PointAsked[])[] = [];
  hand.attach(() => ({ document, units, middle: () => planePoint(10, 20) }));
  const asked = [null, planePoint(1, 1), null, null].map((at, i): PointAsked => {
    const label = String(i + 1);
    return { label, name: label, at };
  });
  hand.begin(asked, 0, (shown) => told.push(shown));
  hand.release({ at: planePoint(9.144, -4.572), metresPerPx: 0.1, alt: false });
  // The second has its place; the third is walked to from the middle of the plate.
  expect(hand.store.getState().index).toBe(2);
  expect(hand.key('Enter', { shift: false, onPlate: false })).toBe(false);
  hand.key('ArrowRight', { shift: false, onPlate: true });
  hand.key('Enter', { shift: false, onPlate: true });
  expect(hand.store.getState().index).toBe(3);
  hand.key('Escape', { shift: false, onPlate: false });
  expect(hand.store.getState().index).toBeNull();
  const [first, second, third, fourth] = told[0] ?? [];
  expect(second?.at).toEqual(asked[1]?.at);
  expect(third?.at?.northM).toBe(20);
  expect(third?.at?.eastM).toBeGreaterThan(10);
  expect(fourth?.at).toBeNull();
  // As it is typed, in yards from the middle of the green or, without one, of the sheet.
  const row = { point: 'P', back: '', between: '1.2', fore: '', east: '', north: '' };
  expect(withPlace(document, null, row, first?.at ?? planePoint(NaN, NaN), units)).toEqual({
    ...row,
    east: '10',
    north: '-5',
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkAtlas } from '../../../shared/atlas/checkAtlas.ts';
import { atlasDocument, findRecord, headerOf, sameDocument } from '../../../shared/atlas/document.ts';
import { migrate } from '../../../shared/atlas/migrations.ts';
import { readAtlasFile, writeAtlasFile } from '../../../shared/formats/atlasFile.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import { processorMs } from '../../helpers/processorMs.ts';

const folder = resolve(import.meta.dirname, '../../fixtures');
const fixture = (name: string): string => readFileSync(resolve(folder, `${name}.geojson`), 'utf8');
const good = fixture('format-1');
const newest = fixture('format-4');

function problemOf(text: string, fileName: string): InputProblem {
  try {
    readAtlasFile(text, fileName);
  } catch (problem) {
    if (problem instanceof InputProblem) return problem;
    throw problem;
  }
  throw new Error(`${fileName} was read`);
}

/** Code, place and what it says, for each broken file. */
const broken: Readonly<Record<string, readonly [code: string, place: string, says: string]>> = {
  truncated: ['file-truncated', 'line 26, column 29, near feature 2', 'use the backup'],
  'newer-version': ['newer-file', 'swale.format', 'Update Swale'],
  'foreign-geojson': ['foreign-file', '', 'import this one'],
  'not-json': ['not-json', 'line 1, column 1', '.geojson'],
  nan: ['not-a-number', 'line 32, column 146, near feature 3', 'NaN stands where a number is needed'],
  infinite: [
    'position-out-of-range',
    'feature 3 (id "spot-1"), geometry.coordinates[0]',
    'not a finite number',
  ],
  'out-of-range': [
    'position-out-of-range',
    'feature 3 (id "spot-1"), geometry.coordinates[1]',
    'may be swapped',
  ],
  projected: ['position-out-of-range', 'feature 3 (id "spot-1"), geometry.coordinates[0]', 'map projection'],
  swapped: ['position-far-away', 'feature 3 (id "spot-1")', 'they are swapped'],
  'self-crossing': [
    'self-crossing',
    'feature 2 (id "green-1", "The green"), geometry.coordinates[0]',
    'corners 1 and 3',
  ],
  'too-few-positions': [
    'too-few-positions',
    'feature 1 (id "bunker-1", "Left"), geometry.coordinates[0]',
    'at least four',
  ],
  'not-closed': [
    'ring-not-closed',
    'feature 1 (id "bunker-1", "Left"), geometry.coordinates[0]',
    'Repeat the first',
  ],
  'unknown-kind': ['unknown-kind', 'feature 1 (id "bunker-1", "Left"), properties.kind', '"sandpit"'],
  'unknown-record': ['unknown-kind', 'feature 3 (id "spot-1"), properties.swale', '"molehill"'],
  'missing-member': ['bad-field', 'feature 3 (id "spot-1"), properties.heightM', 'is missing'],
  'wrong-type': ['bad-field', 'feature 3 (id "spot-1"), properties.heightM', 'not a finite number'],
  'dangling-green': ['unknown-reference', 'hole 1 (id "h1", "Only"), greenId', '"green-9"'],
  'dangling-hole': ['unknown-reference', 'feature 5 (id "flag-a", "middle"), properties.holeId', '"h9"'],
  'duplicate-id': ['duplicate-id', 'feature 4 (id "spot-1"), id', 'first at feature 3'],
  'unknown-member': ['unknown-member', 'feature 4 (id "spot-2")', '"colour"'],
  'multi-polygon': [
    'wrong-geometry',
    'feature 1 (id "bunker-1", "Left"), geometry.type',
    'split a MultiPolygon',
  ],
};

describe('broken atlas files', () => {
  it.each(Object.entries(broken))(
    '%s is refused with its place and a remedy',
    (name, [code, place, says]) => {
      const problem = problemOf(fixture(name), `${name}.geojson`);
      expect(problem.code).toBe(code);
      expect(problem.place).toBe([`${name}.geojson`, place].filter((part) => part !== '').join(', '));
      expect(problem.message).toContain(says);
      expect(problem.remedy).toMatch(/^[A-Z].*\.$/);
    },
  );

  it('has a test for every fixture', () => {
    const files = readdirSync(folder).filter((name) => name.endsWith('.geojson'));
    const read = ['format-1', 'format-2', 'format-3', 'format-4', 'without-flag', 'without-elevation'];
    expect(files.map((name) => name.replace('.geojson', '')).sort()).toEqual(
      [...Object.keys(broken), ...read].sort(),
    );
  });

  it.each([
    ['without-flag', 'hole-without-flag:h1'],
    ['without-elevation', 'green-without-elevation:green-1'],
  ])('%s is read, and the checks say what keeps it from being planned', (name, id) => {
    const findings = checkAtlas(readAtlasFile(fixture(name), name));
    expect(findings.filter(({ severity }) => severity === 'error').map((found) => found.id)).toEqual([id]);
  });

  it('lets a crossing outline through for mending when asked to', () => {
    const document = readAtlasFile(fixture('self-crossing'), 'mine', { crossingOutlines: 'keep' });
    const [found] = checkAtlas(document);
    expect(found?.id).toBe('self-crossing:green-1');
    const mended = found?.mend?.apply(document);
    expect(mended && checkAtlas(mended).filter(({ check }) => check === 'self-crossing')).toEqual([]);
    expect(mended && readAtlasFile(writeAtlasFile(mended), 'mended').records.size).toBe(
      document.records.size,
    );
  });

  it('says where every truncation breaks off', () => {
    for (let end = 1; end < good.trimEnd().length; end += 7) {
      expect(problemOf(good.slice(0, end), 'cut').code).toBe('file-truncated');
    }
  });
});

describe('the atlas file', () => {
  it('is the same text after reading and writing, whatever the order of records and members', () => {
    const document = readAtlasFile(newest, 'newest');
    expect(writeAtlasFile(document)).toBe(newest);
    const shuffled = atlasDocument(
      [...document.records.values()]
        .reverse()
        .map((record) => Object.fromEntries(Object.entries(record).reverse()) as unknown as typeof record),
    );
    expect(writeAtlasFile(shuffled)).toBe(newest);
  });

  it('keeps measured carries, in one order of members, and refuses them where they do not rise', () => {
    const carries = '"carriesM":{"smallM":8.2,"mediumM":18,"longM":40.5}';
    const measured = newest.replace('"loftDeg":52,"bounceDeg":10', (club) => `${club},${carries}`);
    expect(measured).toContain(carries);
    expect(writeAtlasFile(readAtlasFile(measured, 'measured'))).toBe(measured);
    const turned = measured.replace(carries, '"carriesM":{"longM":40.5,"smallM":8.2,"mediumM":18}');
    expect(writeAtlasFile(readAtlasFile(turned, 'turned'))).toBe(measured);
    const falling = problemOf(measured.replace('8.2', '28.2'), 'falling');
    expect(falling.code).toBe('bad-field');
    expect(falling.message).toContain('bag[1].carriesM: It must rise from small to medium to long.');
    expect(problemOf(measured.replace('8.2', '-8.2'), 'negative').place).toContain('carriesM');
  });

  it('raises a file of format 1 as it was released', () => {
    const old = readAtlasFile(good, 'old');
    const records = readAtlasFile(newest, 'newest').records;
    for (const [id, record] of old.records) expect(records.get(id)).toEqual(record);
    expect([...records.keys()].filter((id) => !old.records.has(id))).toEqual([
      ...['another', 'choice-1', 'choice-2', 'source-1', 'eye-1', 'grid-1', 'picture-1', 'landmark-1'],
    ]);
    expect(writeAtlasFile(old)).toContain('"format": 4');
  });

  it('raises a file of format 2 as it was released', () => {
    const text = fixture('format-2');
    const old = readAtlasFile(text, 'old');
    const records = readAtlasFile(newest, 'newest').records;
    for (const [id, record] of old.records) expect(records.get(id)).toEqual(record);
    expect(writeAtlasFile(old).replace('"format": 4', '"format": 2')).toBe(text);
  });

  it('raises a file of format 3 as it was released: its picks go to the player in use', () => {
    const text = fixture('format-3');
    const old = readAtlasFile(text, 'old');
    expect(findRecord(old, 'choice', 'choice-1')?.playerId).toBe('someone');
    const written = writeAtlasFile(old).replace('"format": 4', '"format": 3');
    expect(written.replace(',"playerId":"someone"', '')).toBe(text);
    const noneInUse = readAtlasFile(
      text.replace('"inUse":true}\n  ],\n  "choices"', '"inUse":false}\n  ],\n  "choices"'),
      'old',
    );
    expect(findRecord(noneInUse, 'choice', 'choice-1')?.playerId).toBe('another');
    const nobody = text.replace(/"players": \[[^]*?\n {2}\]/, '"players": []');
    expect(findRecord(readAtlasFile(nobody, 'nobody'), 'choice', 'choice-1')).toBeUndefined();
    const gone = newest.replace('"playerId":"another"', '"playerId":"nobody"');
    expect(problemOf(gone, 'gone').place).toContain('playerId');
  });

  it('refuses a grid that does not hold a height for each node', () => {
    const short = problemOf(newest.replace('"columns":3', '"columns":4'), 'short');
    expect(short.place).toBe('short, feature 6 (id "grid-1", "Cut from a survey"), properties.heightsM');
    expect(short.message).toContain('one height for each node');
  });

  it('is RFC 7946: closed rings, outer ones counter-clockwise, no more than nine decimals', () => {
    const { features } = JSON.parse(good) as {
      features: { geometry: { type: string; coordinates: number[][][] } }[];
    };
    const polygons = features.filter(({ geometry }) => geometry.type === 'Polygon');
    expect(polygons).toHaveLength(2);
    for (const { geometry } of polygons) {
      const [ring = []] = geometry.coordinates;
      expect(ring[0]).toEqual(ring.at(-1));
      const twice = ring.slice(1).reduce((sum, [x = 0, y = 0], i) => {
        const [px = 0, py = 0] = ring[i] ?? [];
        return sum + (px + 30) * (y - 45) - (x + 30) * (py - 45);
      }, 0);
      expect(twice).toBeGreaterThan(0);
    }
    expect(good).not.toMatch(/\[-?\d+\.\d{10,}/);
  });

  it('accepts the wrong winding and a byte order mark, as readers should', () => {
    const document = readAtlasFile(good, 'good');
    const green = findRecord(document, 'area', 'green-1');
    const ring = green?.rings[0] ?? [];
    const lines = [...ring, ...ring.slice(0, 1)].map((at) => `   ${JSON.stringify(at)}`);
    const turned = good.replace(lines.join(',\n'), lines.toReversed().join(',\n'));
    expect(turned).not.toBe(good);
    expect(sameDocument(readAtlasFile(`\uFEFF${turned}`, 'turned'), document)).toBe(true);
  });

  it('keeps names as text, whatever they hold', () => {
    const name = '<img src=x onerror=alert(1)> "q" \\ \u2028 ½ 草';
    const document = readAtlasFile(good.replace('"name":"Small"', `"name":${JSON.stringify(name)}`), 'odd');
    expect(headerOf(document).name).toBe(name);
    expect(headerOf(readAtlasFile(writeAtlasFile(document), 'again')).name).toBe(name);
  });

  it('does not let a file reach into objects', () => {
    for (const member of ['"__proto__":{"x":1}', '"constructor":1', '"toString":1'])
      expect(problemOf(good.replace('"heightM":10.33', `"heightM":10.33,${member}`), 'odd').code).toBe(
        'unknown-member',
      );
    expect(problemOf(good.replace('"swale":"spotHeight"', '"swale":"__proto__"'), 'odd').code).toBe(
      'unknown-kind',
    );
  });

  it('answers hostile size in bounded time', () => {
    const began = processorMs();
    const spot = (i: number): string =>
      `{"type":"Feature","id":"s${String(i)}","properties":{"swale":"spotHeight","heightM":1,"accuracyM":0.01},"geometry":{"type":"Point","coordinates":[-30,45]}}`;
    const many = Array.from({ length: 100_010 }, (_, i) => spot(i)).join(',');
    expect(problemOf(good.replace('"features": [', `"features": [${many},`), 'many').code).toBe(
      'too-many-features',
    );
    const zigzag = Array.from(
      { length: 12_000 },
      (_, i) => `[-30,${String(45 + (i % 2) * 1e-3 + i * 1e-9)}]`,
    );
    const long = good.replace(
      /(?<="id":"bunker-1".*\[\[\n)[^]*?(?=\n {2}\]\])/,
      [...zigzag, '[-30,45]'].join(','),
    );
    expect(problemOf(long, 'long').code).toBe('too-many-positions');
    expect(problemOf(' '.repeat(64 * 1024 * 1024 + 1), 'large').code).toBe('file-too-large');
    expect(problemOf('['.repeat(5_000_000), 'deep').code).toBe('file-truncated');
    expect(processorMs() - began).toBeLessThan(20_000);
  });

  it('raises older formats one step at a time', () => {
    const steps = [
      { from: 1, change: 'a', up: (records: readonly object[]) => records.map((r) => ({ ...r, a: 1 })) },
      {
        from: 2,
        change: 'b',
        up: (records: readonly object[]) => records.map((r) => ({ ...r, b: 'a' in r })),
      },
    ];
    expect(migrate([{ id: 'x' }], 1, 3, steps)).toEqual([{ id: 'x', a: 1, b: true }]);
    expect(migrate([{ id: 'x' }], 3, 3, steps)).toEqual([{ id: 'x' }]);
    expect(() => migrate([], 1, 4, steps)).toThrow('no migration');
  });
});

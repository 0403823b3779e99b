import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { frameOf, headerOf, recordsOf } from '../../../shared/atlas/document.ts';
import { changeHeader, putRecords } from '../../../shared/atlas/edits.ts';
import type { AtlasRecord } from '../../../shared/atlas/records.ts';
import { writeBundle } from '../../../shared/formats/bundle.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import { readAtlas, readBundle } from '../../../main/cli/readInput.ts';
import { writeAtlasFile } from '../../../shared/formats/atlasFile.ts';
import { temporaryFolder } from '../../helpers/temporaryFolder.ts';
import { at, ground, osmXml, placedAtlas } from '../../unit/formats/exchangeFixtures.ts';
import { runTestCli } from './runTestCli.ts';

const sample = resolve(import.meta.dirname, '..', '..', '..', 'sample-course', 'ossel-down.geojson');

/** The sample set down where its nominal anchor is, so that map formats can be tried. */
async function placedSample(folder: string): Promise<string> {
  const document = changeHeader('placed', { placed: true }).apply(await readAtlas(sample));
  const path = join(folder, 'placed.geojson');
  writeFileSync(path, writeAtlasFile(document));
  return path;
}

describe('import', () => {
  it('previews without writing, makes a new atlas, and adds to one that is there', async () => {
    const folder = temporaryFolder();
    const into = join(folder, 'course.geojson');
    const osm = join(folder, 'map.osm');
    writeFileSync(osm, osmXml());
    const shown = await runTestCli(['import', osm, '--into', into, '--new', 'Seaward', '--preview']);
    expect([shown.code, shown.err]).toEqual([0, '']);
    expect(shown.out).toMatch(/comes in {2}1 green \(area:green\): .*\n/);
    expect(shown.out).toMatch(/left out {2}1 pins: Flags move daily/);
    expect(shown.out).toMatch(/source .*OpenStreetMap contributors/);
    expect(existsSync(into)).toBe(false);
    const made = await runTestCli([
      'import',
      osm,
      '--into',
      into,
      '--new',
      'Seaward',
      '--without',
      'area:path',
    ]);
    expect([made.code, made.err]).toEqual([0, '']);
    const document = await readAtlas(into);
    expect(headerOf(document)).toMatchObject({ name: 'Seaward', placed: true });
    expect(recordsOf(document, 'area').some(({ kind }) => kind === 'path')).toBe(false);
    const csv = join(folder, 'points.csv');
    writeFileSync(csv, 'east,north,height\n1,2,20.5\n');
    const out = join(folder, 'with-heights.geojson');
    const kept = readFileSync(into, 'utf8');
    expect((await runTestCli(['import', csv, '--into', into, '--out', out])).code).toBe(0);
    expect(recordsOf(await readAtlas(out), 'spotHeight')).toHaveLength(1);
    expect(readFileSync(into, 'utf8')).toBe(kept);
    // What is replaced is kept beside it.
    expect((await runTestCli(['import', csv, '--into', into])).code).toBe(0);
    const [backups = ''] = readdirSync(join(folder, 'swale-backups'));
    const [before = ''] = readdirSync(join(folder, 'swale-backups', backups));
    expect(readFileSync(join(folder, 'swale-backups', backups, before), 'utf8')).toBe(kept);
  });

  it('reads a bundle and writes one again with its pictures, and says which picture is missing', async () => {
    const folder = temporaryFolder();
    const content = Uint8Array.of(0xff, 0xd8, 0xff, 7);
    const laid = (id: string, sha256: string): AtlasRecord => ({
      ...{ type: 'picture', id, name: `Picture ${id}`, sha256, mediaType: 'image/jpeg' },
      ...{ widthPx: 40, heightPx: 30, opacity: 1, shown: true, attribution: '', licence: '' },
      corners: [[lonLat(-30, 45), lonLat(-29.999, 45), lonLat(-29.999, 45.001), lonLat(-30, 45.001)]],
    });
    const hash = createHash('sha256').update(content).digest('hex');
    const document = putRecords('laid', [laid('p', hash), laid('q', '0'.repeat(64))]).apply(
      await readAtlas(sample),
    );
    const into = join(folder, 'course.zip');
    writeFileSync(into, writeBundle(document, new Map([[hash, content]])));
    const checked = await runTestCli(['check', into]);
    expect(checked.out).toMatch(/warning {2}picture Picture q: its file is not here/);
    expect(checked.out).not.toContain('Picture p');
    const csv = join(folder, 'points.csv');
    writeFileSync(csv, 'east,north,height\n1,2,20.5\n');
    const kept = readFileSync(into);
    const plain = await runTestCli(['import', csv, '--into', into, '--out', join(folder, 'a.geojson')]);
    expect([plain.code, plain.err]).toEqual([1, expect.stringContaining('ends in .zip')]);
    expect(readFileSync(into)).toEqual(kept);
    expect((await runTestCli(['import', csv, '--into', into])).code).toBe(0);
    const after = await readBundle(into);
    expect(recordsOf(after.document, 'spotHeight').length).toBe(recordsOf(document, 'spotHeight').length + 1);
    expect([...after.pictures]).toEqual([[hash, content]]);
  });

  it('changes nothing where any of its files is broken', async () => {
    const folder = temporaryFolder();
    const into = await placedSample(folder);
    const kept = readFileSync(into, 'utf8');
    const [good, bad] = [join(folder, 'a.csv'), join(folder, 'b.gpx')];
    writeFileSync(good, 'east,north,height\n1,2,20.5\n');
    writeFileSync(bad, '<gpx><wpt lat="45" lon');
    const { code, err } = await runTestCli(['import', good, bad, '--into', into]);
    expect(code).toBe(1);
    expect(err).toMatch(/^swale import: b\.gpx, line 1.*use another copy\.\n$/);
    expect(readFileSync(into, 'utf8')).toBe(kept);
    const unplaced = await runTestCli(['import', good, bad, '--into', sample, '--out', join(folder, 'x')]);
    expect(unplaced.code).toBe(1);
    expect((await runTestCli(['import', good])).code).toBe(2);
  });
});

describe('export', () => {
  it('writes each format, and what it writes comes back', { timeout: 60_000 }, async () => {
    const folder = temporaryFolder();
    const atlas = await placedSample(folder);
    for (const to of ['geojson', 'kml', 'gpx', 'csv', 'contours', 'asc', 'tif']) {
      const out = join(folder, `out.${to}`);
      const { code, err } = await runTestCli(['export', atlas, '--to', to, '--hole', '2', '--out', out]);
      expect([to, code, err]).toEqual([to, 0, '']);
      expect(readFileSync(out).length).toBeGreaterThan(400);
    }
    expect(readFileSync(join(folder, 'out.prj'), 'utf8')).toContain('UTM_Zone_26N');
    for (const name of ['out.asc', 'out.tif']) {
      const into = ['--into', atlas, '--out', join(folder, 'with-grid.geojson')];
      const { code, out } = await runTestCli(['import', join(folder, name), ...into, '--json']);
      expect(code).toBe(0);
      const { previews } = JSON.parse(out) as {
        previews: { groups: { records: { datumShiftM: number }[] }[] }[];
      };
      // The grid came from these very heights: no shift to speak of.
      expect(Math.abs(previews[0]?.groups[0]?.records[0]?.datumShiftM ?? NaN)).toBeLessThan(0.02);
    }
    const gpx = await runTestCli(['export', atlas, '--to', 'gpx', '--hole', '2']);
    expect(gpx.out.match(/<name>Hole 2 flag/g)).toHaveLength(4);
    const plan = await runTestCli([
      ...['export', atlas, '--to', 'plan', '--hole', '2', '--ball', '1', '--flag', 'A', '--shots', '20'],
    ]);
    const [headings = '', ...rows] = plan.out.trim().split('\r\n');
    expect(headings).toContain('strokes');
    expect(rows.length).toBeGreaterThan(1);
    expect(rows.filter((row) => row.split(',')[8] === 'yes')).toHaveLength(1);
  });

  it('refuses map formats for an atlas on a blank canvas', async () => {
    for (const to of ['geojson', 'kml', 'gpx', 'contours', 'tif', 'asc']) {
      const { code, err } = await runTestCli([
        'export',
        sample,
        '--to',
        to,
        '--hole',
        '2',
        '--out',
        'nowhere/x',
      ]);
      expect(code).toBe(1);
      expect(err).toMatch(/blank canvas.*Place it on the earth first/);
    }
    expect((await runTestCli(['export', sample, '--to', 'csv'])).out).toMatch(/^kind,id,east_m/);
    expect((await runTestCli(['export', sample, '--to', 'dxf'])).code).toBe(2);
  });
});

describe('surface', () => {
  it('needs no flag, day or player: a survey has a surface of its own', async () => {
    const places = [
      [0, 0],
      [8, 2],
      [-3, 7],
    ] as const;
    const spots = places.map(([east, north], i) => ({
      ...{ type: 'spotHeight' as const, id: `s${String(i)}`, accuracyM: 0.005 },
      ...{ at: at(east, north), heightM: ground(east, north) },
    }));
    const bare = join(temporaryFolder(), 'bare.geojson');
    writeFileSync(bare, writeAtlasFile(placedAtlas(spots)));
    const { out } = await runTestCli(['surface', bare, '--hole', '4']);
    expect(out).toContain('3 readings, 0 that the ground does not pass');
    expect(out).not.toContain('Flag');
  });

  it('gives grid, residuals, confidence and points', { timeout: 90_000 }, async () => {
    const document = await readAtlas(sample);
    const spot = recordsOf(document, 'spotHeight').find(({ id }) => id === 'h2-spot-010');
    const place = spot?.at ?? [0, 0];
    const plane = frameOf(document).toPlane(spot?.at ?? headerOf(document).anchor);
    const points = JSON.stringify([{ lon: place[0], lat: place[1] }, plane]);
    const { code, out } = await runTestCli(['surface', sample, '--hole', '2', '--points', '--json'], points);
    expect(code).toBe(0);
    const report = JSON.parse(out) as {
      grid: { columns: number; rows: number; heightsM: number[] };
      readings: { id: string; residual: number; accuracy: number }[];
      confidence: { columns: number; rows: number; heightSdM: number[]; slopeSdPct: number[] };
      points: { heightM: number; heightSdM: number; slopePct: number }[];
      flags: { label: string; limitPct: number; faults: string[] }[];
      measureNext: { reduction: number }[];
    };
    expect(report.flags.map(({ label }) => label)).toEqual(['A', 'B', 'C', 'D']);
    expect(report.measureNext).toHaveLength(3);
    expect(report.grid.heightsM).toHaveLength(report.grid.columns * report.grid.rows);
    expect(report.confidence.heightSdM).toHaveLength(report.confidence.columns * report.confidence.rows);
    const [byDegrees, byMetres] = report.points;
    expect(byDegrees?.heightM).toBeCloseTo(byMetres?.heightM ?? NaN, 6);
    const residual = report.readings.find(({ id }) => id === spot?.id)?.residual ?? NaN;
    expect(byDegrees?.heightM).toBeCloseTo((spot?.heightM ?? NaN) + residual, 3);
    expect(byDegrees?.heightSdM).toBeLessThan(0.05);
    const one = ['surface', sample, '--hole', '2'];
    const shot = await runTestCli([...one, '--ball', '1', '--flag', 'A']);
    expect(shot.out).toMatch(
      /The choice, putt:putter, is the same on \d of 8 surfaces[^]*Measure next at east/,
    );
    expect((await runTestCli([...one, '--ball', '1'])).code).toBe(2);
    expect((await runTestCli([...one, '--day', 'never'])).err).toMatch(/no day "never"/);
    const text = await runTestCli(['surface', sample, '--hole', '2', '--points'], points);
    expect(text.out).toMatch(/^Hole 2: \d+ x \d+ heights.*\n\d+ readings, .*\n[^]*slope %/);
    expect((await runTestCli(['surface', sample, '--hole', '2', '--points'], '[{"x":1}]')).err).toMatch(
      /place 1/,
    );
  });
});

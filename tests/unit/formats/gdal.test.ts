import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { gridNodes } from '../../../shared/atlas/gridNodes.ts';
import { surfaceGrid } from '../../../shared/formats/export/surfaceGrid.ts';
import { writeAsciiGrid } from '../../../shared/formats/export/writeAsciiGrid.ts';
import { writeContours, writeGeoJson } from '../../../shared/formats/export/writeGeoJson.ts';
import { writeGeoTiff } from '../../../shared/formats/export/writeGeoTiff.ts';
import { writeKml } from '../../../shared/formats/export/writeKml.ts';
import type { ImportOptions } from '../../../shared/formats/import/importPreview.ts';
import { previewImport } from '../../../shared/formats/import/previewImport.ts';
import { systemOfEpsg, systemOfWkt } from '../../../shared/formats/raster/coordinateSystem.ts';
import { nationalGrids } from '../../../shared/formats/raster/nationalGrids.ts';
import { lonLat } from '../../../shared/geometry/points.ts';
import { at, frame, ground, placedAtlas } from './exchangeFixtures.ts';

const missing = spawnSync('gdalinfo', ['--version']).error !== undefined;
if (missing) console.log('SKIP comparison with GDAL: no gdalinfo here (Debian: apt-get install gdal-bin).');

const box = { westM: -40, southM: -35, eastM: 45, northM: 40 };
const field = {
  sampleHeight(eastM: number, northM: number, out: Float64Array): void {
    out[0] = ground(eastM, northM);
  },
};
const run = (program: string, ...args: readonly string[]): string =>
  execFileSync(program, args, { encoding: 'utf8', stdio: ['pipe', 'pipe', 'pipe'] });

interface GdalInfo {
  readonly cornerCoordinates: { readonly upperLeft: [number, number]; readonly lowerRight: [number, number] };
  readonly bands: readonly { readonly noDataValue?: number; readonly type: string }[];
  readonly size: [number, number];
}

describe.skipIf(missing)('grids, between GDAL and here', () => {
  const folder = mkdtempSync(join(tmpdir(), 'swale-gdal-'));
  const path = (name: string): string => join(folder, name);
  const grid = surfaceGrid(frame, field, box, 0.5);

  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  beforeAll(() => {
    const { text, projection } = writeAsciiGrid(grid);
    writeFileSync(path('ours.asc'), text);
    writeFileSync(path('ours.prj'), projection);
    writeFileSync(path('ours.tif'), writeGeoTiff(grid));
  });

  it.each(['ours.asc', 'ours.tif'])('GDAL reads %s: extent to 1 cm, heights to 1 mm', (name) => {
    const info = JSON.parse(run('gdalinfo', '-json', path(name))) as GdalInfo;
    expect(info.size).toEqual([grid.columns, grid.rows]);
    expect(info.bands[0]?.noDataValue).toBe(-9999);
    const { upperLeft, lowerRight } = info.cornerCoordinates;
    expect(Math.abs(upperLeft[0] - (grid.westX - 0.25))).toBeLessThan(0.01);
    expect(Math.abs(upperLeft[1] - (grid.northY + 0.25))).toBeLessThan(0.01);
    expect(Math.abs(lowerRight[0] - (grid.westX + (grid.columns - 0.5) * 0.5))).toBeLessThan(0.01);
    expect(Math.abs(lowerRight[1] - (grid.northY - (grid.rows - 0.5) * 0.5))).toBeLessThan(0.01);
    // Every cell, as GDAL lists it.
    const xyz = run('gdal_translate', '-q', '-of', 'XYZ', path(name), '/vsistdout/').trim().split('\n');
    expect(xyz).toHaveLength(grid.columns * grid.rows);
    let known = 0;
    for (const line of xyz) {
      const [x = NaN, y = NaN, z = NaN] = line.split(' ').map(Number);
      if (z === -9999) continue;
      const { eastM, northM } = frame.toPlane(grid.system.toLonLat(x, y));
      known += 1;
      if (Math.abs(z - ground(eastM, northM)) > 0.001)
        throw new Error(`${line}: not ${ground(eastM, northM)}`);
    }
    expect(known).toBeGreaterThan(0.9 * grid.columns * grid.rows);
  });

  const written: readonly (readonly [string, string, readonly string[], number])[] = [
    [
      'float32, deflate, tiled',
      'd.tif',
      [
        '-ot',
        'Float32',
        '-co',
        'COMPRESS=DEFLATE',
        '-co',
        'TILED=YES',
        '-co',
        'BLOCKXSIZE=64',
        '-co',
        'BLOCKYSIZE=64',
      ],
      0.001,
    ],
    ['float32, deflate with predictor', 'p.tif', ['-co', 'COMPRESS=DEFLATE', '-co', 'PREDICTOR=3'], 0.001],
    ['float64, LZW, striped', 'l.tif', ['-ot', 'Float64', '-co', 'COMPRESS=LZW'], 0.001],
    ['big-endian, plain', 'b.tif', ['-co', 'ENDIANNESS=BIG'], 0.001],
    ['BigTIFF', 'g.tif', ['-co', 'BIGTIFF=YES'], 0.001],
    [
      '16-bit millimetres with scale',
      's.tif',
      [
        '-ot',
        'UInt16',
        '-scale',
        '0',
        '60',
        '0',
        '60000',
        '-a_nodata',
        '0',
        '-a_scale',
        '0.001',
        '-a_offset',
        '0',
      ],
      0.002,
    ],
    ['ASCII grid', 'a.asc', ['-of', 'AAIGrid', '-co', 'DECIMAL_PRECISION=4'], 0.001],
  ];
  it.each(written)('%s from GDAL is read: heights on the spot', async (_, name, options, toleranceM) => {
    run('gdal_translate', '-q', ...options, path('ours.tif'), path(name));
    const worst = await worstMisfit(name);
    expect(worst).toBeLessThan(toleranceM + 0.0006);
  });

  it('heights in feet, as GDAL declares them, come in as metres', async () => {
    // EPSG:5702 is a height in US survey feet, 3937 of which are 1200 m.
    const feet = ['-scale', '0', '100', '0', String((100 * 3937) / 1200), '-ot', 'Float64'];
    run('gdal_translate', '-q', '-a_srs', 'EPSG:32630+5702', ...feet, path('ours.tif'), path('ft.tif'));
    expect(await worstMisfit('ft.tif')).toBeLessThan(0.001 + 0.0006);
  });

  it.each([
    [4326, 'near'],
    [27700, 'near'],
    [25830, 'near'],
    [3857, 'near'],
  ])('a grid GDAL warped to EPSG:%i is read where it lies', async (epsg, method) => {
    const name = `w${epsg}.tif`;
    const fine = epsg === 4326 ? ['0.000004', '0.000004'] : ['0.4', '0.4'];
    run(
      'gdalwarp',
      '-q',
      '-t_srs',
      `EPSG:${epsg}`,
      '-r',
      method,
      '-tr',
      ...fine,
      '-co',
      'COMPRESS=DEFLATE',
      path('ours.tif'),
      path(name),
    );
    // The nearest cell is up to 0.35 m away on ground of a few percent, and the British datum is shifted by seven numbers.
    expect(await worstMisfit(name)).toBeLessThan(epsg === 27700 ? 0.25 : 0.03);
  });

  it('GDAL reads our GeoJSON, contours and KML', () => {
    const document = placedAtlas();
    const lines = [{ heightM: 20.1, positions: [at(0, 0), at(5, 1)] }];
    writeFileSync(path('a.geojson'), writeGeoJson(document));
    writeFileSync(path('c.geojson'), writeContours(document, lines));
    writeFileSync(path('a.kml'), writeKml(document));
    expect(run('ogrinfo', '-al', path('a.geojson'))).toMatch(/kind \(String\) = green[^]*POLYGON/);
    expect(run('ogrinfo', '-al', path('c.geojson'))).toMatch(/height_m \(Real\) = 20.1/);
    expect(run('ogrinfo', '-al', path('a.kml'))).toMatch(/Name \(String\) = Fourth/);
  });

  async function worstMisfit(name: string): Promise<number> {
    const content = new Uint8Array(readFileSync(path(name)));
    const options: ImportOptions = { marginM: 8, matchDatum: false };
    const projection = name.endsWith('.asc')
      ? readFileSync(path(name.replace('.asc', '.prj')), 'utf8')
      : undefined;
    const file = { fileName: name, content, ...(projection !== undefined && { projection }) };
    const preview = await previewImport(placedAtlas(), file, options);
    const records = preview.groups[0]?.records ?? [];
    let worst = 0;
    let count = 0;
    for (const record of records)
      if (record.type === 'elevationGrid')
        for (const node of gridNodes(record, frame)) {
          count += 1;
          worst = Math.max(worst, Math.abs(node.heightM - ground(node.at.eastM, node.at.northM)));
        }
    expect(count).toBeGreaterThan(1000);
    return worst;
  }
});

describe.skipIf(missing)('map projections, beside PROJ', () => {
  const places: Readonly<Record<number, readonly [number, number]>> = {
    27700: [-3.2, 54.1],
    2157: [-8.2, 53.1],
    2154: [2.5, 47.2],
    28992: [5.6, 52.3],
    3812: [4.7, 50.6],
    3006: [16.2, 60.1],
    3067: [25.3, 62.2],
    2180: [19.4, 52.2],
    3763: [-8.4, 39.9],
    2056: [7.9, 46.8],
    2193: [172.4, -41.3],
    3857: [12.1, 41.2],
    32633: [14.2, 48.1],
    32756: [151.2, -33.9],
    25832: [9.3, 51.7],
    26917: [-80.4, 33.1],
    6340: [-116.2, 36.3],
    28355: [146.3, -37.1],
    7856: [152.1, -30.2],
  };

  it('holds a place for every grid of the table', () => {
    expect(nationalGrids.filter(({ epsg }) => !(epsg in places))).toEqual([]);
  });

  it.each(Object.entries(places))('EPSG:%s', (code, [lon, lat]) => {
    const answer = execFileSync(
      'gdaltransform',
      ['-s_srs', 'EPSG:4326', '-t_srs', `EPSG:${code}`, '-output_xy'],
      {
        input: `${String(lon)} ${String(lat)}\n`,
        encoding: 'utf8',
      },
    );
    const [x = NaN, y = NaN] = answer.trim().split(/\s+/).map(Number);
    const system = systemOfEpsg(Number(code), '');
    const [ourX, ourY] = system.fromLonLat(lonLat(lon, lat));
    const off = Math.hypot(ourX - x, ourY - y);
    expect(off).toBeLessThan(system.uncertainM > 0 ? system.uncertainM : 0.01);
    const [backLon, backLat] = system.toLonLat(ourX, ourY);
    // A shift of datum by seven numbers is undone to a millimetre only: its rotations are taken as small.
    const digits = system.uncertainM > 0 ? 7 : 8;
    expect([backLon, backLat]).toEqual([expect.closeTo(lon, digits), expect.closeTo(lat, digits)]);
  });

  it.each(nationalGrids.map(({ epsg }) => epsg))('knows EPSG:%i by the .prj text GDAL writes', (epsg) => {
    const wkt = run('gdalsrsinfo', '-o', 'wkt_esri', '--single-line', `EPSG:${epsg}`);
    expect(systemOfWkt(wkt, '').epsg).toBe(epsg);
  });
});

import { zlibSync, zipSync } from 'fflate';
import { writeArrayBuffer } from 'geotiff';
import { describe, expect, it } from 'vitest';
import { recordCount, type ImportOptions } from '../../../shared/formats/import/importPreview.ts';
import { refuseSize } from '../../../shared/formats/import/fileFormat.ts';
import { previewImport } from '../../../shared/formats/import/previewImport.ts';
import { surfaceGrid } from '../../../shared/formats/export/surfaceGrid.ts';
import { writeAsciiGrid } from '../../../shared/formats/export/writeAsciiGrid.ts';
import { writeGeoJson } from '../../../shared/formats/export/writeGeoJson.ts';
import { writeGeoTiff } from '../../../shared/formats/export/writeGeoTiff.ts';
import { writeKml } from '../../../shared/formats/export/writeKml.ts';
import { writeAtlasFile } from '../../../shared/formats/atlasFile.ts';
import { utmWkt } from '../../../shared/formats/raster/coordinateSystem.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import { processorMs } from '../../helpers/processorMs.ts';
import { at, bytes, emptyAtlas, frame, ground, osmXml, placedAtlas } from './exchangeFixtures.ts';

const SECONDS = 1000;
const document = placedAtlas();
const before = writeAtlasFile(document);
const prj = utmWkt(32630);

const field = {
  sampleHeight(eastM: number, northM: number, out: Float64Array): void {
    out[0] = ground(eastM, northM);
  },
};
const box = { westM: -25, southM: -25, eastM: 25, northM: 25 };
const grid = surfaceGrid(frame, field, box, 1);
const tiff = writeGeoTiff(grid);
const ascii = bytes(writeAsciiGrid(grid).text);
const kmz = zipSync({ 'doc.kml': bytes(writeKml(document)) }, { level: 6 });
const points = bytes(
  `lon,lat,height\n${Array.from({ length: 40 }, (_, i) => `${at(i, 2 * i).join(',')},${(20 + i / 100).toFixed(3)}`).join('\n')}\n`,
);

/** The reason why nothing of a file is taken; it fails where something is. */
async function reason(
  fileName: string,
  content: Uint8Array,
  options: ImportOptions = {},
  projection = prj,
): Promise<InputProblem> {
  try {
    const preview = await previewImport(document, { fileName, content, projection }, options);
    throw new Error(`${fileName} was read: ${String(recordCount(preview))} records`);
  } catch (problem) {
    expect(writeAtlasFile(document)).toBe(before);
    if (problem instanceof InputProblem) return problem;
    throw problem;
  }
}

const whole: readonly (readonly [string, Uint8Array])[] = [
  ['a.geojson', bytes(writeGeoJson(document))],
  ['a.osm', bytes(osmXml())],
  ['a.kml', bytes(writeKml(document))],
  ['a.kmz', kmz],
  ['a.gpx', bytes(`<gpx><wpt lat="53.9" lon="-3.6"><name>Hole 4 ball 1</name></wpt></gpx>`)],
  ['a.tif', tiff],
  ['a.asc', ascii],
];

describe('broken files', () => {
  it.each(whole)(
    '%s: cut at every tenth of its length, a reason and nothing taken',
    async (fileName, content) => {
      const good = await previewImport(document, { fileName, content, projection: prj });
      expect(recordCount(good)).toBeGreaterThan(0);
      for (let tenth = 1; tenth < 10; tenth += 1) {
        const problem = await reason(fileName, content.slice(0, Math.floor((content.length * tenth) / 10)));
        expect(problem.message).toMatch(/truncated|cut short|breaks off|damaged|end/i);
        expect(problem.remedy).toMatch(/^[A-Z].*\.$/);
      }
    },
  );

  it('a point list cut short is refused where a row is torn, and else has just the rows before it', async () => {
    for (let tenth = 1; tenth < 10; tenth += 1) {
      const part = points.slice(0, Math.floor((points.length * tenth) / 10));
      try {
        const preview = await previewImport(document, { fileName: 'a.csv', content: part });
        const rows = new TextDecoder().decode(part).trim().split('\n').length - 1;
        expect(recordCount(preview)).toBe(rows);
      } catch (problem) {
        expect(problem).toBeInstanceOf(InputProblem);
      }
    }
  });

  it.each([...whole.map(([name]) => name), 'a.csv', 'a.json'])('%s: nothing in it', async (fileName) => {
    expect((await reason(fileName, new Uint8Array(0))).code).toBe('file-empty');
    expect((await reason(fileName, bytes(' \n'))).remedy).toMatch(/\.$/);
  });

  it('an atlas file, which is to be opened', async () => {
    expect((await reason('a.geojson', bytes(before))).code).toBe('own-atlas');
  });

  it('a TIFF whose header says the other byte order', async () => {
    const swapped = tiff.slice();
    swapped.set(tiff[0] === 0x4d ? [0x49, 0x49] : [0x4d, 0x4d]);
    expect((await reason('a.tif', swapped)).code).toBe('wrong-byte-order');
  });

  it('grids that say nothing, or too little, of their projection', async () => {
    expect((await reason('a.asc', ascii, {}, '')).code).toBe('missing-projection');
    const bare = new Uint8Array(
      writeArrayBuffer(new Float32Array(16), {
        ...{ width: 4, height: 4, ModelPixelScale: [1, 1, 0], ModelTiepoint: [0, 0, 0, 5e5, 5e6, 0] },
        ...{ GTModelTypeGeoKey: 1, GTRasterTypeGeoKey: 1, ProjectedCSTypeGeoKey: 32767 },
      }),
    );
    expect((await reason('a.tif', bare)).code).toBe('unknown-projection');
    const odd = await reason('a.asc', ascii, { crs: 'EPSG:5514' });
    expect(odd.message).toMatch(/EPSG:5514.*Convert it/);
    const datum = prj.replaceAll('WGS_1984', 'Pulkovo_1942').replace('UTM_Zone', 'GK_Zone');
    expect((await reason('a.asc', ascii, {}, datum)).message).toMatch(/datum.*Pulkovo_1942/);
    expect((await reason('a.asc', ascii, { crs: 'EPSG:32633' })).code).toMatch(/far-away|elsewhere/);
  });

  it('latitude where longitude belongs, and positions of a projection', async () => {
    const swapped = JSON.stringify({ type: 'Point', coordinates: [53.9, -3.6] });
    expect((await reason('a.geojson', bytes(swapped))).code).toBe('lat-lon-swapped');
    const beyond = JSON.stringify({ type: 'Point', coordinates: [-33, 151] });
    expect((await reason('a.geojson', bytes(beyond))).message).toMatch(/are swapped/);
    const metres = JSON.stringify({ type: 'Point', coordinates: [460_000, 5_970_000] });
    expect((await reason('a.geojson', bytes(metres))).message).toMatch(/map projection/);
    expect((await reason('a.csv', bytes('lon,lat,height\n53.9,-3.6,12\n'))).code).toBe('lat-lon-swapped');
  });

  it('heights in feet declared as metres are flagged, beside spot heights and without', async () => {
    const feet = surfaceGrid(
      frame,
      { sampleHeight: (e, n, out) => void (out[0] = (20 + 0.04 * (e + 25) - 0.01 * n) / 0.3048) },
      box,
      1,
    );
    const content = writeGeoTiff(feet);
    const spots = [-10, -4, 0, 5, 11].map((east, i) => ({
      ...{ type: 'spotHeight' as const, id: `s${i}`, at: at(east, 1) },
      ...{ heightM: 20 + 0.04 * (east + 25) - 0.01, accuracyM: 0.01 },
    }));
    for (const atlas of [placedAtlas(), placedAtlas(spots)]) {
      const codes = async (options: ImportOptions) =>
        (await previewImport(atlas, { fileName: 'a.tif', content }, options)).warnings.map(
          ({ code }) => code,
        );
      expect(await codes({})).toContain('suspicious-height-unit');
      expect(await codes({ heightUnit: 'ft' })).not.toContain('suspicious-height-unit');
    }
  });

  it('XML that declares entities, refers to outside, or nests without end', async () => {
    const laughs = Array.from({ length: 12 }, (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(12)}">`).join(
      '',
    );
    const bomb = `<?xml version="1.0"?><!DOCTYPE osm [<!ENTITY l0 "ha">${laughs}]><osm>&l12;</osm>`;
    for (const name of ['a.osm', 'a.gpx', 'a.kml'])
      expect((await reason(name, bytes(bomb))).code).toBe('xml-doctype');
    const outside = '<!DOCTYPE gpx SYSTEM "file:///etc/passwd"><gpx/>';
    expect((await reason('a.gpx', bytes(outside))).code).toBe('xml-doctype');
    expect((await reason('a.gpx', bytes('<gpx>&unknown;</gpx>'))).code).toBe('xml-broken');
    expect((await reason('a.kml', bytes('<kml>' + '<Folder>'.repeat(500_000)))).code).toBe('xml-too-deep');
  });

  it('answers hostile size in seconds', { timeout: 40 * SECONDS }, async () => {
    const began = processorMs();
    // An archive is taken at its word, however much or little it says: more is refused, less is cut off there.
    const zeros = new Uint8Array(20 * 1024 * 1024);
    const honest = zipSync({ 'doc.kml': zeros }, { level: 1 });
    const stating = (size: number): Uint8Array => {
      const lying = honest.slice();
      const view = new DataView(lying.buffer);
      for (let i = 0; i + 4 < lying.length; i += 1)
        if (view.getUint32(i, true) === zeros.length) view.setUint32(i, size, true);
      return lying;
    };
    expect((await reason('a.kmz', stating(4_000_000_000))).code).toBe('archive-too-large');
    expect((await reason('a.kmz', stating(1000))).code).toBe('archive-broken');
    const many = Object.fromEntries(Array.from({ length: 1500 }, (_, i) => [`n${i}.txt`, new Uint8Array(0)]));
    expect((await reason('a.kmz', zipSync(many))).code).toBe('archive-too-large');
    for (const name of ['../../doc.kml', '/etc/doc.kml', 'C:\\doc.kml', 'a/..\\..\\doc.kml'])
      expect((await reason('a.kmz', zipSync({ [name]: bytes('<kml/>') }))).code).toBe('archive-path');
    // A file of 200 MB is refused by its size; a million corners by their count.
    expect(() => refuseSize('geojson', 200 * 1024 * 1024, 'a.geojson')).toThrow(
      /a\.geojson: .*200 MB.*Cut out/,
    );
    const corners = `[${'[-3.6,53.9],'.repeat(1_000_000)}[-3.6,53.9]]`;
    const line = bytes(`{"type":"LineString","coordinates":${corners}}`);
    expect((await reason('a.geojson', line)).message).toMatch(/more than 500000 positions.*Cut out/);
    // A block of a grid that unpacks to a thousand times what its header says.
    expect((await reason('a.tif', deflateBomb())).remedy).toMatch(/\.$/);
    const claims = `ncols 2000000000\nnrows 2000000000\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3\n`;
    expect((await reason('a.asc', bytes(claims))).code).toBe('grid-size');
    expect(processorMs() - began).toBeLessThan(20 * SECONDS);
  });

  it('a multipolygon of 10,000 jagged nodes is left out with a reason, and a smooth one is thinned', async () => {
    const began = processorMs();
    const ring = (jag: number): number[][] => {
      const corners = Array.from({ length: 10_000 }, (_, i) => {
        const radius = 300 + (i % 2) * jag;
        const angle = (2 * Math.PI * i) / 10_000;
        return [...at(radius * Math.cos(angle), radius * Math.sin(angle))];
      });
      return [...corners, corners[0] ?? []];
    };
    const preview = async (jag: number) => {
      const feature = {
        ...{ type: 'Feature', properties: { golf: 'fairway' } },
        geometry: { type: 'MultiPolygon', coordinates: [[ring(jag)]] },
      };
      return previewImport(emptyAtlas(), { fileName: 'a.geojson', content: bytes(JSON.stringify(feature)) });
    };
    const jagged = await preview(4);
    expect(recordCount(jagged)).toBe(0);
    expect(jagged.leftOut[0]?.why).toMatch(/more than 5000 corners.*simplify/);
    const smooth = await preview(0);
    const [record] = smooth.groups[0]?.records ?? [];
    expect(record?.type === 'area' && (record.rings[0]?.length ?? 0)).toBeLessThan(500);
    expect(processorMs() - began).toBeLessThan(10 * SECONDS);
  });

  it('outlines that cross themselves are left out, or lose a small loop', async () => {
    const outline = async (corners: readonly (readonly [number, number])[]) => {
      const ring = corners.map(([east, north]) => at(east, north));
      const geometry = { type: 'Polygon', coordinates: [[...ring, ring[0]]] };
      const feature = { type: 'Feature', properties: { golf: 'bunker' }, geometry };
      return previewImport(document, { fileName: 'a.geojson', content: bytes(JSON.stringify(feature)) });
    };
    const bow = await outline([
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ]);
    expect(bow.leftOut[0]?.why).toMatch(/crosses itself/);
    const loop = await outline([
      [0, 0],
      [20, 0],
      [20, 20],
      [0.2, 20],
      [0, 20.2],
      [0, 19.8],
      [0.4, 20.1],
    ]);
    expect(recordCount(loop)).toBe(1);
  });
});

/** One deflated strip that unpacks to 30 MB where 4 x 4 floats are promised. */
function deflateBomb(): Uint8Array {
  const packed = zlibSync(new Uint8Array(30 * 1024 * 1024), { level: 1 });
  const plain = writeArrayBuffer(new Float32Array(grid.columns * grid.rows), {
    ...{ width: grid.columns, height: grid.rows, ModelPixelScale: [1, 1, 0] },
    ModelTiepoint: [0, 0, 0, grid.westX, grid.northY, 0],
    ...{ GTModelTypeGeoKey: 1, GTRasterTypeGeoKey: 1, ProjectedCSTypeGeoKey: 32630 },
    Compression: 8,
  });
  const out = new Uint8Array(plain.byteLength + packed.length);
  out.set(new Uint8Array(plain));
  out.set(packed, plain.byteLength);
  const view = new DataView(out.buffer);
  const entries = view.getUint16(8);
  for (let i = 0; i < entries; i += 1) {
    const entry = 10 + 12 * i;
    const tag = view.getUint16(entry);
    if (tag === 273) view.setUint32(entry + 8, plain.byteLength);
    if (tag === 279) view.setUint32(entry + 8, packed.length);
  }
  return out;
}

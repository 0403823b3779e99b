/**
 * How long importing takes against what any reader must at least do with the same bytes, measured in the same run:
 * `npx tsx tests/bench/formats.ts`. Last ratios (the lower the better): GeoTIFF of 2 million cells 4.0 (0.16 s: eighteen
 * windows are cut, averaged and placed), ASCII grid 0.9 (0.46 s), OpenStreetMap 1.2.
 */
import { fromArrayBuffer } from 'geotiff';
import { atlasDocument } from '../../shared/atlas/document.ts';
import { writeGeoTiff } from '../../shared/formats/export/writeGeoTiff.ts';
import { writeAsciiGrid } from '../../shared/formats/export/writeAsciiGrid.ts';
import { surfaceGrid } from '../../shared/formats/export/surfaceGrid.ts';
import { previewImport } from '../../shared/formats/import/previewImport.ts';
import { applyImport } from '../../shared/formats/import/applyImport.ts';
import { readXml } from '../../shared/formats/xml/readXml.ts';
import { localFrame } from '../../shared/geometry/localFrame.ts';
import { lonLat, planePoint } from '../../shared/geometry/points.ts';
import { bytes, osmXml } from '../unit/formats/exchangeFixtures.ts';

const anchor = lonLat(-3.6, 53.9);
const frame = localFrame(anchor);

/** Two million heights over a course of eighteen greens. */
const grid = surfaceGrid(
  frame,
  { sampleHeight: (e, n, out) => void (out[0] = 30 + 4 * Math.sin(e / 60) * Math.cos(n / 80)) },
  { westM: -700, southM: -700, eastM: 700, northM: 700 },
  1,
);
const course = atlasDocument([
  { type: 'atlas', id: 'atlas', name: 'Bench', kind: 'course', placed: true, anchor, note: '' },
  ...Array.from({ length: 18 }, (_, i) => {
    const [east, north] = [-500 + 220 * (i % 6), -400 + 300 * Math.floor(i / 6)];
    return {
      ...{ type: 'area' as const, id: `g${i}`, kind: 'green' as const, name: '' },
      rings: [
        Array.from({ length: 16 }, (__, k) =>
          frame.toLonLat(
            planePoint(east + 14 * Math.cos((k * Math.PI) / 8), north + 14 * Math.sin((k * Math.PI) / 8)),
          ),
        ),
      ],
      ...{ lipHeightM: null, treeHeightM: null, canopyBaseM: null },
    };
  }),
]);

const tiff = writeGeoTiff(grid);
const { text, projection } = writeAsciiGrid(grid);
const ascii = bytes(text);
console.log(
  `${grid.columns} x ${grid.rows} = ${((grid.columns * grid.rows) / 1e6).toFixed(2)} million cells`,
);

async function seconds(work: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < 3; i += 1) {
    const began = performance.now();
    await work();
    times.push((performance.now() - began) / 1000);
  }
  return Math.min(...times);
}

async function whole(fileName: string, content: Uint8Array): Promise<void> {
  let pieces = 0;
  const preview = await previewImport(
    course,
    { fileName, content, projection },
    { progress: (done) => void (pieces = done) },
  );
  const after = applyImport(course, preview).apply(course);
  if (after.records.size < course.records.size + 18 || pieces < 18) throw new Error('nothing came in');
}

function row(name: string, ours: number, what: string, least: number): void {
  console.log(
    `${name.padEnd(28)} ${ours.toFixed(3)} s, ${what} ${least.toFixed(3)} s, ratio ${(ours / least).toFixed(1)}`,
  );
}

const splitting = await seconds(() => Float64Array.from(text.split(/\s+/), Number));
const reading = await seconds(async () => {
  const image = await (await fromArrayBuffer(tiff.slice().buffer)).getImage();
  return image.readRasters();
});
row(
  'GeoTIFF, clipped to greens',
  await seconds(() => whole('a.tif', tiff)),
  'its library, all cells',
  reading,
);
row('ASCII grid', await seconds(() => whole('a.asc', ascii)), 'split and Number', splitting);

const repeated = osmXml().replace('</osm>', '');
const many = bytes(
  `${repeated}${Array.from({ length: 60_000 }, (_, i) => `<node id="${i + 1000}" lat="53.9" lon="-3.6"/>`).join('\n')}</osm>`,
);
const parsing = await seconds(() => readXml(new TextDecoder().decode(many), 'a.osm'));
row(
  'OpenStreetMap, 60,000 nodes',
  await seconds(() => previewImport(course, { fileName: 'a.osm', content: many })),
  'parsing the XML alone',
  parsing,
);

import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { creditLines } from '../../../shared/atlas/credits.ts';
import { atlasDocument, headerOf, recordsOf, sameDocument } from '../../../shared/atlas/document.ts';
import type { AtlasRecord } from '../../../shared/atlas/records.ts';
import { commit, historyOf, undo } from '../../../shared/atlas/history.ts';
import { applyImport } from '../../../shared/formats/import/applyImport.ts';
import type { ImportPreview } from '../../../shared/formats/import/importPreview.ts';
import { previewImport } from '../../../shared/formats/import/previewImport.ts';
import { readAtlasFile, writeAtlasFile } from '../../../shared/formats/atlasFile.ts';
import { writeGeoJson } from '../../../shared/formats/export/writeGeoJson.ts';
import { writeGpx } from '../../../shared/formats/export/writeGpx.ts';
import { writeKml } from '../../../shared/formats/export/writeKml.ts';
import { polygonAreaM2 } from '../../../shared/geometry/ring.ts';
import { at, bytes, emptyAtlas, frame, osmXml, placedAtlas } from './exchangeFixtures.ts';

const counts = (preview: ImportPreview): Record<string, number> =>
  Object.fromEntries(preview.groups.map(({ key, records }) => [key, records.length]));
const whys = (preview: ImportPreview): string[] => preview.leftOut.map(({ what }) => what);

describe('OpenStreetMap data', () => {
  it('comes in by its golf tags, with a note on what does not, as one step', async () => {
    const before = emptyAtlas();
    const preview = await previewImport(before, { fileName: 'course.osm', content: bytes(osmXml()) });
    expect(counts(preview)).toEqual({
      'area:fairway': 1,
      'area:green': 1,
      'area:bunker': 1,
      'area:penaltyArea': 1,
      'area:path': 1,
      'area:tree': 1,
      hole: 1,
    });
    expect(whys(preview).sort()).toEqual(['clubhouses', 'pins']);
    const edit = applyImport(before, preview);
    const history = commit(historyOf(before), edit.apply(before), edit.annotation);
    const after = history.present.state;
    expect(headerOf(after).placed).toBe(true);
    const [hole] = recordsOf(after, 'hole');
    expect([hole?.label, hole?.par, hole?.name, hole?.greenId]).toEqual(['7', 4, 'Out & back', 'osm-w104']);
    const fairway = recordsOf(after, 'area').find(({ kind }) => kind === 'fairway');
    const area = polygonAreaM2((fairway?.rings ?? []).map((ring) => ring.map(frame.toPlane)));
    expect(area).toBeCloseTo(40 * 40 - 8 * 8, 1);
    expect(recordsOf(after, 'area').find(({ kind }) => kind === 'tree')?.treeHeightM).toBe(9);
    expect(creditLines(after)[0]).toMatch(/OpenStreetMap contributors.*ODbL/);
    expect(sameDocument(readAtlasFile(writeAtlasFile(after), 'after'), after)).toBe(true);
    expect(undo(history).present.state).toBe(before);
    // The same file again brings nothing twice.
    const again = await previewImport(after, { fileName: 'course.osm', content: bytes(osmXml()) });
    expect(again.groups).toEqual([]);
    expect(again.warnings.map(({ code }) => code)).toContain('already-imported');
  });

  it('says the same in Overpass JSON, with positions beside the ways or inside them', async () => {
    const square = [at(-9, -9), at(9, -9), at(9, 9), at(-9, 9), at(-9, -9)].map(([lon, lat]) => ({
      lon,
      lat,
    }));
    const nodes = square.slice(0, 4).map((one, i) => ({ type: 'node', id: i + 1, ...one }));
    const beside = [...nodes, { type: 'way', id: 9, nodes: [1, 2, 3, 4, 1], tags: { golf: 'green' } }];
    const inside = [{ type: 'way', id: 9, geometry: square, tags: { golf: 'green' } }];
    const [a, b] = await Promise.all(
      [beside, inside].map((elements) =>
        previewImport(emptyAtlas(), { fileName: 'q.json', content: bytes(JSON.stringify({ elements })) }),
      ),
    );
    expect(a?.groups[0]?.records).toEqual(b?.groups[0]?.records);
    expect(a && counts(a)).toEqual({ 'area:green': 1 });
  });

  it('leaves groups out, gives outlines another kind, and drops what would hang in the air', async () => {
    const before = emptyAtlas();
    const preview = await previewImport(before, { fileName: 'course.osm', content: bytes(osmXml()) });
    const after = applyImport(before, preview, {
      without: new Set(['area:green', 'area:path']),
      areaKinds: { 'area:penaltyArea': 'bare' },
    }).apply(before);
    expect(recordsOf(after, 'hole')[0]?.greenId).toBeNull();
    expect(
      recordsOf(after, 'area')
        .map(({ kind }) => kind)
        .sort(),
    ).toEqual(['bare', 'bunker', 'fairway', 'tree']);
  });
});

describe('walked outlines and waypoints', () => {
  const walk = (closedBy: number): string => {
    const points = Array.from({ length: 60 }, (_, i) => {
      const angle = (i * (2 * Math.PI - closedBy)) / 59;
      const [lon, lat] = at(30 + 8 * Math.cos(angle), 8 * Math.sin(angle));
      return `<trkpt lat="${lat}" lon="${lon}"><ele>${20 + i}</ele></trkpt>`;
    });
    return `<trk><name>Left bunker</name><trkseg>${points.join('')}</trkseg></trk>`;
  };
  const gpx = (inner: string): Uint8Array => bytes(`<gpx version="1.1">${inner}</gpx>`);

  it('makes areas of tracks whose ends meet, sorted by name, and leaves open ones out', async () => {
    const closed = await previewImport(placedAtlas(), { fileName: 'w.gpx', content: gpx(walk(0.1)) });
    expect(counts(closed)).toEqual({ 'area:bunker': 1 });
    const [record] = closed.groups[0]?.records ?? [];
    const rings = record?.type === 'area' ? record.rings : [];
    const area = polygonAreaM2(rings.map((ring) => ring.map(frame.toPlane)));
    expect(area / (64 * Math.PI)).toBeGreaterThan(0.98);
    expect(rings[0]?.length).toBeLessThan(40);
    const open = await previewImport(placedAtlas(), { fileName: 'w.gpx', content: gpx(walk(2)) });
    expect(whys(open)).toEqual(['open lines']);
  });

  it('gives waypoints to the hole they name or lie by, numbering those without a number', async () => {
    const wpt = (name: string, east: number, north: number): string => {
      const [lon, lat] = at(east, north);
      return `<wpt lat="${lat}" lon="${lon}"><ele>31</ele><name>${name}</name></wpt>`;
    };
    const content = gpx(
      wpt('Hole 4 flag C', 0, 3) +
        wpt('Hole 4 ball 9', 20, 3) +
        wpt('by the oak', -18, 0) +
        wpt('far', 900, 0),
    );
    const document = placedAtlas();
    const preview = await previewImport(document, { fileName: 'points.gpx', content });
    const after = applyImport(document, preview).apply(document);
    expect(recordsOf(after, 'holeLocation').map(({ label }) => label)).toEqual(['C']);
    expect(recordsOf(after, 'ballPosition').map(({ label, name }) => [label, name])).toEqual([
      ['9', 'Hole 4 ball 9'],
      ['1', 'by the oak'],
    ]);
    expect(whys(preview)).toEqual(['points by no hole']);
    expect(preview.warnings.map(({ code }) => code)).toContain('receiver-heights');
  });
});

describe('what is written', () => {
  const full = async () => {
    const document = emptyAtlas();
    const preview = await previewImport(document, { fileName: 'course.osm', content: bytes(osmXml()) });
    const flags: readonly AtlasRecord[] = [
      { type: 'holeLocation', id: 'fa', holeId: 'osm-w107', label: 'A', name: '', at: at(1, 2) },
      {
        type: 'ballPosition',
        id: 'b1',
        holeId: 'osm-w107',
        label: '1',
        name: 'bank',
        at: at(15, 6),
        lie: 'clean',
        coverOverride: null,
      },
    ];
    const after = applyImport(document, preview).apply(document);
    return atlasDocument([...after.records.values(), ...flags]);
  };

  it.each([
    ['GeoJSON', 'x.geojson', writeGeoJson],
    ['KML', 'x.kml', writeKml],
  ])('comes back the same from %s', async (_, fileName, write) => {
    const document = await full();
    const preview = await previewImport(emptyAtlas(), { fileName, content: bytes(write(document)) });
    const back = applyImport(emptyAtlas(), preview).apply(emptyAtlas());
    const shapes = (from: typeof document): unknown[] =>
      recordsOf(from, 'area')
        .map(({ kind, rings }) => JSON.stringify([kind, rings.map((ring) => ring.length)]))
        .sort();
    expect(shapes(back)).toEqual(shapes(document));
    const marks = (from: typeof document): unknown[] => [
      recordsOf(from, 'hole').map(({ label, par, line }) => [label, par, line]),
      recordsOf(from, 'holeLocation').map(({ label, at: place }) => [label, place]),
      recordsOf(from, 'ballPosition').map(({ label, at: place }) => [label, place]),
    ];
    expect(marks(back)).toEqual(marks(document));
    expect(write(document)).toContain('OpenStreetMap contributors');
  });

  it('packs as KMZ and unpacks within its limits', async () => {
    const document = await full();
    const kmz = zipSync({ 'doc.kml': strToU8(writeKml(document)), 'files/a.png': new Uint8Array(10) });
    const preview = await previewImport(emptyAtlas(), { fileName: 'x.kmz', content: kmz });
    expect(preview.format).toBe('KMZ');
    expect(counts(preview)['area:bunker']).toBe(1);
  });

  it('gives flags and balls as waypoints that find their hole again', async () => {
    const document = await full();
    const bare = { records: new Map([...document.records].filter(([id]) => id !== 'fa' && id !== 'b1')) };
    const preview = await previewImport(bare, { fileName: 'x.gpx', content: bytes(writeGpx(document)) });
    expect(counts(preview)).toEqual({ holeLocation: 1, ballPosition: 1 });
  });

  it.each([
    ['GeoJSON', writeGeoJson],
    ['KML', writeKml],
    ['GPX', writeGpx],
  ])('is refused as %s for an atlas on a blank canvas', (_, write) => {
    expect(() => write(emptyAtlas())).toThrow(/blank canvas.*Place it on the earth first/);
  });
});

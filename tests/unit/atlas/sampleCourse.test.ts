import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { osselDown, osselPractice } from '../../../sample-course/make.ts';
import { checkAtlas } from '../../../shared/atlas/checkAtlas.ts';
import {
  findRecord,
  frameOf,
  holesInOrder,
  planePolygon,
  recordsOf,
} from '../../../shared/atlas/document.ts';
import { readAtlasFile, writeAtlasFile } from '../../../shared/formats/atlasFile.ts';
import { insideDistanceM, pointInPolygon } from '../../../shared/geometry/ring.ts';

const samples = [
  ['ossel-down.geojson', osselDown, ['2', '4', '7'], 'course'],
  ['ossel-practice.geojson', osselPractice, ['S1', 'S2'], 'practiceGround'],
] as const;

describe.each(samples)('%s', (file, make, labels, kind) => {
  const text = readFileSync(resolve(import.meta.dirname, '../../../sample-course', file), 'utf8');
  const document = readAtlasFile(text, file);
  const frame = frameOf(document);

  it('is what its script makes, and comes through a round trip', () => {
    expect(writeAtlasFile(make())).toBe(text);
    expect(writeAtlasFile(document)).toBe(text);
  });

  it('has nothing for the checks to find', () => {
    expect(checkAtlas(document)).toEqual([]);
  });

  it('holds what a sample should', () => {
    expect(document.records.get('atlas')).toMatchObject({ kind, placed: false });
    expect(holesInOrder(document).map(({ label }) => label)).toEqual(labels);
    expect(recordsOf(document, 'player').filter(({ inUse }) => inUse)).toHaveLength(1);
    expect(recordsOf(document, 'conditions')).toHaveLength(4);
    const greens = holesInOrder(document).map(({ greenId }) => findRecord(document, 'area', greenId ?? ''));
    for (const hole of holesInOrder(document)) {
      const green = greens.find((area) => area?.id === hole.greenId);
      if (green === undefined) throw new Error(`no green for ${hole.label}`);
      const polygon = planePolygon(frame, green.rings);
      const spots = recordsOf(document, 'spotHeight').map(({ at }) =>
        insideDistanceM(frame.toPlane(at), polygon),
      );
      expect(spots.filter((inside) => inside > 0).length).toBeGreaterThanOrEqual(25);
      expect(spots.filter((inside) => inside < 0 && inside > -20).length).toBeGreaterThanOrEqual(10);
      const slopes = recordsOf(document, 'slopeReading').filter(({ at }) =>
        pointInPolygon(frame.toPlane(at), polygon),
      );
      expect(slopes.length).toBeGreaterThanOrEqual(5);
      const flags = recordsOf(document, 'holeLocation').filter(({ holeId }) => holeId === hole.id);
      expect(flags.map(({ label }) => label)).toEqual(['A', 'B', 'C', 'D']);
      const balls = recordsOf(document, 'ballPosition').filter(({ holeId }) => holeId === hole.id);
      expect(balls.map(({ label }) => label)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8']);
      const covers = balls.map(({ at }) =>
        recordsOf(document, 'area')
          .filter(({ rings }) => pointInPolygon(frame.toPlane(at), planePolygon(frame, rings)))
          .map((area) => area.kind),
      );
      const wanted = [
        'approach',
        'lightRough',
        'approach',
        'bunker',
        'bunker',
        'lightRough',
        'fringe',
        'heavyRough',
      ];
      wanted.forEach((cover, i) => expect(covers[i]).toContain(cover));
      expect(balls[4]?.lie).toBe('buried');
    }
  });
});

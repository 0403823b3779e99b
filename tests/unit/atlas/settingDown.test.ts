import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { frameOf, headerOf } from '../../../shared/atlas/document.ts';
import { mapPositions, placeAtlas } from '../../../shared/atlas/moving.ts';
import type { AtlasRecord } from '../../../shared/atlas/records.ts';
import { settingDown, shownSetDown } from '../../../shared/atlas/settingDown.ts';
import { readAtlasFile } from '../../../shared/formats/readAtlasFile.ts';
import { sameAsSheet, turnedAffine, movedAffine } from '../../../shared/geometry/affine.ts';
import { geodesic } from '../../../shared/geometry/geodesic.ts';
import { localFrame } from '../../../shared/geometry/localFrame.ts';
import { type LonLat, lonLat, planePoint } from '../../../shared/geometry/points.ts';

const practice = readAtlasFile(
  readFileSync(resolve(import.meta.dirname, '../../../sample-course/ossel-practice.geojson'), 'utf8'),
  'practice',
);

const positionsOf = (record: AtlasRecord): readonly LonLat[] => {
  const found: LonLat[] = [];
  mapPositions(record, (at) => {
    found.push(at);
    return at;
  });
  return found;
};

it('sets an unplaced atlas down where it was laid over the map, every shape kept to the millimetre', () => {
  // Far north and a kilometre off, where the north of one place is not the north of the other.
  const over = localFrame(lonLat(24.5, 61.25));
  const turn = (37.25 * Math.PI) / 180;
  const rigid = movedAffine(
    turnedAffine(sameAsSheet, planePoint(0, 0), Math.cos(turn), Math.sin(turn)),
    900,
    -450,
  );
  const { anchor, turnDeg } = settingDown(over, rigid);
  const after = placeAtlas('placed', anchor, turnDeg).apply(practice);
  const shown = shownSetDown(practice, over, rigid);
  expect(headerOf(after).placed).toBe(true);
  expect(turnDeg).not.toBeCloseTo(37.25, 3);
  expect(turnDeg).toBeCloseTo(37.25, 1);
  const from = frameOf(practice);
  let compared = 0;
  for (const record of practice.records.values()) {
    const before = positionsOf(record);
    const set = after.records.get(record.id);
    const drawn = shown.records.get(record.id);
    if (record.type === 'atlas' || before.length === 0 || set === undefined || drawn === undefined) continue;
    const here = positionsOf(set);
    const [first, there] = [before[0], here[0]];
    if (first === undefined || there === undefined) continue;
    for (const [i, at] of before.entries()) {
      const now = here[i];
      const seen = positionsOf(drawn)[i];
      if (now === undefined || seen === undefined) throw new Error('a position is gone');
      const a = from.toPlane(first);
      const b = from.toPlane(at);
      const span = Math.hypot(a.eastM - b.eastM, a.northM - b.northM);
      expect(Math.abs(geodesic(there, now).distanceM - span)).toBeLessThan(0.001);
      // What was shown while it was being moved is where it comes to lie.
      expect(geodesic(now, seen).distanceM).toBeLessThan(0.001);
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(500);
});

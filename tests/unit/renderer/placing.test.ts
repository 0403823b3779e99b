import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { PlacingHand } from '../../../renderer/survey/placing/placingHand.ts';
import { findRecord, frameOf, headerOf, sameDocument } from '../../../shared/atlas/document.ts';
import { type Edit, putRecords } from '../../../shared/atlas/edits.ts';
import { laidUpright, pictureAffine, pictureCorners } from '../../../shared/atlas/pictures.ts';
import type { AtlasDocument, PictureRecord } from '../../../shared/atlas/records.ts';
import { readAtlasFile } from '../../../shared/formats/readAtlasFile.ts';
import { onPlane } from '../../../shared/geometry/affine.ts';
import { localFrame } from '../../../shared/geometry/localFrame.ts';
import { lonLat, planePoint, type PlanePoint } from '../../../shared/geometry/points.ts';
import { distanceM } from '../../../shared/geometry/ring.ts';

const practice = readAtlasFile(
  readFileSync(resolve(import.meta.dirname, '../../../sample-course/ossel-practice.geojson'), 'utf8'),
  'practice',
);
const frame = frameOf(practice);
const size = { widthPx: 400, heightPx: 300 };
const picture: PictureRecord = {
  ...{ type: 'picture', id: 'p', name: 'From above', sha256: '0'.repeat(64), mediaType: 'image/png' },
  ...size,
  corners: pictureCorners(frame, laidUpright(planePoint(500, 500), 40, size), size),
  ...{ opacity: 0.7, shown: true, attribution: '', licence: '' },
};
const laid = putRecords('laid', [picture]).apply(practice);

/** A hand at a plate that shows `document`, and the edits it has made. */
function atPlate(document: AtlasDocument): {
  hand: PlacingHand;
  edits: Edit[];
  keys: (...keys: string[]) => void;
} {
  const hand = new PlacingHand();
  const edits: Edit[] = [];
  hand.attach(() => ({
    document,
    units: { system: 'metres', paceM: 1 },
    edit: (edit) => edits.push(edit),
    middle: () => planePoint(500, 500),
    widthM: () => 60,
  }));
  const keys = (...pressed: string[]): void => {
    for (const key of pressed) hand.key(key.replace('+', ''), { shift: key.startsWith('+'), onPlate: true });
  };
  return { hand, edits, keys };
}
const spot = (at: PlanePoint) => ({ at, metresPerPx: 0.05, alt: true });
const near = (at: PlanePoint | undefined, eastM: number, northM: number): void => {
  expect(distanceM(at ?? planePoint(NaN, NaN), planePoint(eastM, northM))).toBeLessThan(0.001);
};

it('lays a picture on known points, shows what they miss, and keeps it as one step', () => {
  const { hand, edits } = atPlate(laid);
  hand.beginPicture(laid, 'p');
  hand.choose('points');
  const click = (eastM: number, northM: number): void => {
    hand.press(spot(planePoint(eastM, northM)));
    hand.release(spot(planePoint(eastM, northM)));
  };
  click(600, 600);
  expect(hand.state.trouble?.message).toBe('That is not on the picture.');
  // Its left and right edges, half way up, to a line twice as long that goes north.
  click(480, 500);
  click(500, 480);
  near(onPlane(hand.state.affine, { x: 0, y: 150 }), 500, 480);
  const right = onPlane(hand.state.affine, { x: 400, y: 150 });
  click(right.eastM - 0.001, right.northM);
  click(500, 560);
  expect(hand.state.rmsM).toBeNull();
  near(onPlane(hand.state.affine, { x: 0, y: 150 }), 500, 480);
  const middle = onPlane(hand.state.affine, { x: 200, y: 150 });
  expect(distanceM(middle, planePoint(500, 520))).toBeLessThan(0.01);
  // A third point stretches it, a fourth shows how well they agree.
  const top = onPlane(hand.state.affine, { x: 200, y: 290 });
  click(top.eastM, top.northM);
  click(top.eastM - 4, top.northM);
  expect([hand.state.rmsM, hand.state.missesM.length]).toEqual([null, 3]);
  const low = onPlane(hand.state.affine, { x: 210, y: 20 });
  click(low.eastM, low.northM);
  click(low.eastM + 1, low.northM);
  expect(hand.state.rmsM).toBeGreaterThan(0.1);
  expect(Math.max(...hand.state.missesM)).toBeLessThan(1);
  const stretched = hand.state.rmsM ?? 0;
  hand.keepShape(true);
  expect(hand.state.rmsM).toBeGreaterThan(stretched);
  expect(edits).toEqual([]);
  const lies = hand.state.affine;
  hand.finish();
  expect(edits.map(({ annotation }) => annotation)).toEqual(['placed the picture From above']);
  const after = findRecord(edits[0]?.apply(laid) ?? laid, 'picture', 'p');
  if (after === undefined) throw new Error('the picture is gone');
  near(
    onPlane(pictureAffine(frame, after), { x: 400, y: 300 }),
    ...pointOf(onPlane(lies, { x: 400, y: 300 })),
  );
});

const pointOf = ({ eastM, northM }: PlanePoint): [number, number] => [eastM, northM];

it('scales a picture by a distance, moves and turns it by keys alone, and leaves nothing behind when let go', () => {
  const { hand, edits, keys } = atPlate(laid);
  hand.beginPicture(laid, 'p');
  hand.choose('distance');
  keys('+ArrowLeft', '+ArrowLeft', 'Enter', ...Array<string>(4).fill('+ArrowRight'), 'Enter');
  expect(hand.state.focus.on).toBe('length');
  hand.lengthTo('8');
  near(onPlane(hand.state.affine, { x: 0, y: 150 }), 460, 500);
  expect(() => hand.lengthTo('0')).toThrow('does not fit');
  hand.choose('move');
  keys('+ArrowUp', 'ArrowRight', ']', ']', '{');
  const middle = onPlane(hand.state.affine, { x: 200, y: 150 });
  near(middle, 500.1, 501);
  const right = onPlane(hand.state.affine, { x: 400, y: 150 });
  expect((Math.atan2(right.northM - middle.northM, right.eastM - middle.eastM) * 180) / Math.PI).toBeCloseTo(
    4,
    3,
  );
  hand.turnTo('0');
  hand.widthTo('20');
  near(onPlane(hand.state.affine, { x: 400, y: 300 }), 510.1, 508.5);
  keys('Escape');
  expect([hand.state.subject, edits.length]).toEqual([null, 0]);
  expect(hand.key('g', { shift: false, onPlate: true })).toBe(false);
});

it('sets the sheet down by dragging and turning, and by two known coordinates without bending it', () => {
  const { hand, edits, keys } = atPlate(practice);
  const at = lonLat(-3.2, 56.1);
  const over = localFrame(at);
  hand.beginSheet(at, 0, [planePoint(-40, -40), planePoint(40, 40)]);
  // By its body, then by its handle: a quarter turn.
  hand.press(spot(planePoint(0, 0)));
  hand.dragTo(spot(planePoint(100, 20)));
  hand.release(spot(planePoint(100, 20)));
  hand.press(spot(planePoint(100, 60 + 26 * 0.05)));
  hand.dragTo(spot(planePoint(150, 20)));
  hand.release(spot(planePoint(150, 20)));
  near(onPlane(hand.state.affine, { x: 0, y: 10 }), 110, 20);
  keys('Enter');
  const [dragged] = edits;
  if (dragged === undefined) throw new Error('nothing was done');
  const after = dragged.apply(practice);
  near(over.toPlane(headerOf(after).anchor), 100, 20);

  hand.beginSheet(at, 0, [planePoint(-40, -40), planePoint(40, 40)]);
  hand.choose('points');
  const put = (x: number, y: number, eastM: number, northM: number): void => {
    const here = onPlane(hand.state.affine, { x, y });
    hand.press(spot(here));
    hand.release(spot(here));
    hand.putPosition(over.toLonLat(planePoint(eastM, northM)));
  };
  put(0, 0, 200, 0);
  put(30, 0, 200, -31);
  // The two places are a metre farther apart than the sheet says: half of it on each side.
  expect(hand.state.rmsM).toBeCloseTo(0.5, 5);
  expect(hand.state.missesM.map((miss) => Number(miss.toFixed(4)))).toEqual([0.5, 0.5]);
  near(onPlane(hand.state.affine, { x: 30, y: 0 }), 200, -30.5);
  hand.finish();
  expect(edits.map(({ annotation }) => annotation)).toEqual([
    'placed the atlas on the earth',
    'placed the atlas on the earth',
  ]);
  expect(sameDocument(edits[1]?.apply(practice) ?? practice, practice)).toBe(false);
});

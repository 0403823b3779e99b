import { type Affine, onPlane } from '../geometry/affine.ts';
import type { LocalFrame } from '../geometry/localFrame.ts';
import { planePoint, type PlanePoint } from '../geometry/points.ts';
import type { PictureRecord, Rings } from './records.ts';

type Sized = Pick<PictureRecord, 'widthPx' | 'heightPx'>;

/** How a picture lies in the plane: its pixels, from its bottom left corner to the right and up, to metres. */
export function pictureAffine(frame: LocalFrame, picture: PictureRecord): Affine {
  const [bottomLeft, bottomRight, , topLeft] = (picture.corners[0] ?? []).map(frame.toPlane);
  if (bottomLeft === undefined || bottomRight === undefined || topLeft === undefined)
    throw new RangeError('a picture has four corners');
  return {
    a: (bottomRight.eastM - bottomLeft.eastM) / picture.widthPx,
    b: (topLeft.eastM - bottomLeft.eastM) / picture.heightPx,
    c: bottomLeft.eastM,
    d: (bottomRight.northM - bottomLeft.northM) / picture.widthPx,
    e: (topLeft.northM - bottomLeft.northM) / picture.heightPx,
    f: bottomLeft.northM,
  };
}

/** The corners of a picture in the plane: bottom left, bottom right, top right, top left. */
export const pictureOutline = (affine: Affine, { widthPx, heightPx }: Sized): readonly PlanePoint[] =>
  [
    { x: 0, y: 0 },
    { x: widthPx, y: 0 },
    { x: widthPx, y: heightPx },
    { x: 0, y: heightPx },
  ].map((corner) => onPlane(affine, corner));

export const pictureCorners = (frame: LocalFrame, affine: Affine, size: Sized): Rings => [
  pictureOutline(affine, size).map(frame.toLonLat),
];

/** A picture laid upright about a point, so many metres wide. */
export function laidUpright(middle: PlanePoint, widthM: number, { widthPx, heightPx }: Sized): Affine {
  const scale = widthM / widthPx;
  const corner = planePoint(middle.eastM - widthM / 2, middle.northM - (heightPx * scale) / 2);
  return { a: scale, b: 0, c: corner.eastM, d: 0, e: scale, f: corner.northM };
}

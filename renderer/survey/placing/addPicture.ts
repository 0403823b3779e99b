import { laidUpright, pictureCorners } from '../../../shared/atlas/pictures.ts';
import { frameOf } from '../../../shared/atlas/document.ts';
import { type Edit, putRecords } from '../../../shared/atlas/edits.ts';
import type { AtlasDocument, PictureMediaType, PictureRecord } from '../../../shared/atlas/records.ts';
import { pictureHeader } from '../../../shared/formats/pictureFile.ts';
import { planePoint } from '../../../shared/geometry/points.ts';
import { decimals } from '../../../shared/units/numerals.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import type { Pictures } from '../../library/pictures.ts';
import type { PlacingContext } from './placingState.ts';

/** More pixels than these make the plate slow and show no more of a green than a hand can trace. */
const MOST_KEPT_PX = 16_000_000;
/** How much ground a picture takes where the plate is not seen, metres. */
const USUAL_WIDTH_M = 60;

const mediaTypes: readonly PictureMediaType[] = ['image/jpeg', 'image/png', 'image/webp'];
export const PICTURE_TYPES = mediaTypes.join(',');

export const isPicture = ({ type }: Pick<File, 'type'>): boolean =>
  mediaTypes.some((known) => known === type);

interface ReadyPicture {
  readonly content: Uint8Array;
  readonly mediaType: PictureMediaType;
  readonly widthPx: number;
  readonly heightPx: number;
  /** What was done to it; empty for nothing. */
  readonly note: string;
}

/** The picture of a file, made smaller where it is very large. Throws InputProblem for one that cannot be shown. */
export async function readPicture(file: File): Promise<ReadyPicture> {
  const content = new Uint8Array(await file.arrayBuffer());
  const { mediaType } = pictureHeader(content, file.name);
  const broken = (): InputProblem =>
    new InputProblem(
      'picture-broken',
      'the picture is damaged or cut short.',
      file.name,
      'Choose another copy, or save it again with the program that made it.',
    );
  let bitmap: ImageBitmap;
  try {
    // Turned as the camera noted beside it, as the plate will show it.
    bitmap = await createImageBitmap(new Blob([content], { type: mediaType }));
  } catch {
    throw broken();
  }
  try {
    const { width, height } = bitmap;
    const share = Math.sqrt(MOST_KEPT_PX / (width * height));
    if (share >= 1) return { content, mediaType, widthPx: width, heightPx: height, note: '' };
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(width * share);
    canvas.height = Math.round(height * share);
    const pen = canvas.getContext('2d');
    if (pen === null) throw broken();
    pen.imageSmoothingQuality = 'high';
    pen.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    const wanted = mediaType !== 'image/jpeg' && isClear(bitmap) ? 'image/webp' : 'image/jpeg';
    const blob = await new Promise<Blob | null>((done) => {
      canvas.toBlob(done, wanted, 0.9);
    });
    const made = mediaTypes.find((known) => known === blob?.type);
    if (blob === null || made === undefined) throw broken();
    const million = (pixels: number): string => `${decimals(pixels / 1e6, 0)} million`;
    return {
      content: new Uint8Array(await blob.arrayBuffer()),
      mediaType: made,
      ...{ widthPx: canvas.width, heightPx: canvas.height },
      note: `The file has ${million(width * height)} pixels. ${million(canvas.width * canvas.height)} of them are kept, so that the plate stays quick; the file itself is left as it is.`,
    };
  } finally {
    bitmap.close();
  }
}

/** Whether one can see through parts of a picture, judged at the size of a stamp. */
function isClear(bitmap: ImageBitmap): boolean {
  const canvas = document.createElement('canvas');
  canvas.width = 64;
  canvas.height = 64;
  const pen = canvas.getContext('2d');
  if (pen === null) return true;
  pen.drawImage(bitmap, 0, 0, 64, 64);
  const { data } = pen.getImageData(0, 0, 64, 64);
  return data.some((value, i) => i % 4 === 3 && value < 255);
}

/** Keeps the picture of a file, and makes the step that lays it in the middle of what is seen. Throws InputProblem. */
export async function addPicture(
  file: File,
  document: AtlasDocument,
  pictures: Pictures,
  view: Pick<PlacingContext, 'middle' | 'widthM'> | null,
): Promise<{ readonly edit: Edit; readonly id: string; readonly note: string }> {
  const { content, note, ...shape } = await readPicture(file);
  const sha256 = await pictures.keep(content, Date.now());
  const frame = frameOf(document);
  const seenM = view?.widthM() ?? USUAL_WIDTH_M;
  // A wide plate is about half as high: all of the picture and its turning handle are to be seen.
  const widthM = seenM * Math.min(0.7, (0.42 * shape.widthPx) / shape.heightPx);
  const affine = laidUpright(view?.middle() ?? planePoint(0, 0), widthM, shape);
  const record: PictureRecord = {
    type: 'picture',
    id: `picture-${crypto.randomUUID()}`,
    name: file.name.replace(/\.[^.]*$/, '').slice(0, 120) || 'Picture',
    sha256,
    ...shape,
    corners: pictureCorners(frame, affine, shape),
    opacity: 0.7,
    shown: true,
    attribution: '',
    licence: '',
  };
  return { edit: putRecords(`laid the picture ${record.name}`, [record]), id: record.id, note };
}

import type { PictureMediaType } from '../atlas/records.ts';
import { LONGEST_PICTURE_SIDE_PX } from '../atlas/schema.ts';
import { InputProblem } from '../words/inputProblem.ts';

/** Larger files, and more pixels than these, would take more memory than a window has to look at them even once. */
export const MOST_PICTURE_BYTES = 96 * 1024 * 1024;
const MOST_PICTURE_PX = 160_000_000;

export interface PictureHeader {
  readonly mediaType: PictureMediaType;
  /** As stored; a camera may have noted beside it that it is to be turned. */
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * What a picture file says of itself at its head, without unpacking it: JPEG (ISO/IEC 10918-1, start of frame), PNG
 * (ISO/IEC 15948, IHDR) and WebP (RFC 9649).
 * @throws InputProblem for anything else, a head cut short, and a picture too large to be shown.
 */
export function pictureHeader(content: Uint8Array, fileName: string): PictureHeader {
  if (content.length > MOST_PICTURE_BYTES)
    throw new InputProblem(
      'picture-too-large',
      `the file has ${String(Math.round(content.length / 1048576))} MB; the most is ${String(MOST_PICTURE_BYTES / 1048576)}.`,
      fileName,
      'Save it smaller, as a JPEG or cut to the ground you trace.',
    );
  const found = pngHeader(content) ?? jpegHeader(content) ?? webpHeader(content);
  if (found === null)
    throw new InputProblem(
      'not-a-picture',
      'this is not a picture that can be shown, or it is cut short.',
      fileName,
      'Choose a JPEG, PNG or WebP file.',
    );
  const { widthPx, heightPx } = found;
  if (widthPx < 2 || heightPx < 2)
    throw new InputProblem(
      'picture-too-small',
      'there is nothing in the picture.',
      fileName,
      'Choose another.',
    );
  if (Math.max(widthPx, heightPx) > LONGEST_PICTURE_SIDE_PX || widthPx * heightPx > MOST_PICTURE_PX)
    throw new InputProblem(
      'picture-too-large',
      `the picture is ${String(widthPx)} by ${String(heightPx)} pixels; the most is ${String(MOST_PICTURE_PX / 1e6)} million in all.`,
      fileName,
      'Save it smaller, or cut it to the ground you trace.',
    );
  return found;
}

const ascii = (content: Uint8Array, at: number, length: number): string =>
  String.fromCharCode(...content.subarray(at, at + length));

const bigEndian = (content: Uint8Array, at: number, length: number): number => {
  let value = 0;
  for (let i = 0; i < length; i += 1) value = value * 256 + (content[at + i] ?? 0);
  return value;
};
const littleEndian = (content: Uint8Array, at: number, length: number): number => {
  let value = 0;
  for (let i = length - 1; i >= 0; i -= 1) value = value * 256 + (content[at + i] ?? 0);
  return value;
};

function pngHeader(content: Uint8Array): PictureHeader | null {
  if (content.length < 33 || ascii(content, 0, 8) !== '\x89PNG\r\n\x1a\n' || ascii(content, 12, 4) !== 'IHDR')
    return null;
  return { mediaType: 'image/png', widthPx: bigEndian(content, 16, 4), heightPx: bigEndian(content, 20, 4) };
}

function jpegHeader(content: Uint8Array): PictureHeader | null {
  if (bigEndian(content, 0, 2) !== 0xffd8) return null;
  let at = 2;
  while (at + 9 < content.length) {
    if (content[at] !== 0xff) return null;
    const marker = content[at + 1] ?? 0;
    // Start of frame; C4, C8 and CC of that range are tables.
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc)
      return {
        mediaType: 'image/jpeg',
        widthPx: bigEndian(content, at + 7, 2),
        heightPx: bigEndian(content, at + 5, 2),
      };
    // A filler byte, or a marker without a length.
    if (marker === 0xff) at += 1;
    else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) at += 2;
    else at += 2 + bigEndian(content, at + 2, 2);
  }
  return null;
}

function webpHeader(content: Uint8Array): PictureHeader | null {
  if (content.length < 30 || ascii(content, 0, 4) !== 'RIFF' || ascii(content, 8, 4) !== 'WEBP') return null;
  const sized = (widthPx: number, heightPx: number): PictureHeader => ({
    mediaType: 'image/webp',
    widthPx,
    heightPx,
  });
  switch (ascii(content, 12, 4)) {
    case 'VP8X':
      return sized(littleEndian(content, 24, 3) + 1, littleEndian(content, 27, 3) + 1);
    case 'VP8L': {
      const bits = littleEndian(content, 21, 4);
      return sized((bits % 16384) + 1, (Math.floor(bits / 16384) % 16384) + 1);
    }
    case 'VP8 ':
      return sized(littleEndian(content, 26, 2) % 16384, littleEndian(content, 28, 2) % 16384);
    default:
      return null;
  }
}

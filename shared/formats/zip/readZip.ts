import { Inflate } from 'fflate/browser';
import { InputProblem } from '../../words/inputProblem.ts';
import { latin1Text, utf8Text } from '../decodedText.ts';
import { boundedInflate } from './boundedInflate.ts';
import { crc32 } from './crc32.ts';

/** What an archive may hold: everything beyond is refused before it is unpacked. */
export interface ZipLimits {
  readonly mostEntries: number;
  /** Unpacked size of all entries that are wanted. */
  readonly mostBytes: number;
}

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly flags: number;
  readonly crc: number;
  readonly packedSize: number;
  readonly size: number;
  readonly header: number;
}

/**
 * The wanted entries of a ZIP archive (PKWARE's APPNOTE: stored and deflated entries, no ZIP64), by name. Nothing is written
 * anywhere; still a name that would lead out of a folder is refused. Sizes are kept to what the directory promises, and
 * each entry is checked by its sum.
 *
 * @throws InputProblem `archive-broken`, `archive-too-large`, `archive-path` or `archive-kind`
 */
export function readZip(
  content: Uint8Array,
  fileName: string,
  wanted: (name: string) => boolean,
  limits: ZipLimits,
): ReadonlyMap<string, Uint8Array> {
  const entries = directoryOf(content, fileName, limits).filter(({ name }) => wanted(name));
  let total = 0;
  for (const { name, size } of entries) {
    if (leavesFolder(name))
      throw new InputProblem(
        'archive-path',
        `an entry is called "${name.slice(0, 80)}", which leads out of the archive.`,
        fileName,
        'It was made to write where it should not: leave it alone, or unpack it with care.',
      );
    total += size;
    if (total > limits.mostBytes)
      throw tooLarge(`what it holds takes more than ${megabytes(limits.mostBytes)} MB unpacked.`, fileName);
  }
  return new Map(entries.map((entry) => [entry.name, unpacked(content, entry, fileName)]));
}

/** Names and unpacked sizes of the entries, from the directory at the end. */
function directoryOf(content: Uint8Array, fileName: string, { mostEntries }: ZipLimits): readonly Entry[] {
  const view = new DataView(content.buffer, content.byteOffset, content.byteLength);
  const end = endRecord(view);
  if (end < 0) throw broken('it has no directory at its end', fileName);
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count === 0xffff || at === 0xffffffff)
    throw new InputProblem(
      'archive-kind',
      'it is of the kind for very large archives.',
      fileName,
      'Unpack it and choose the file inside.',
    );
  if (count > mostEntries) throw tooLarge(`it has more than ${String(mostEntries)} entries.`, fileName);
  const entries: Entry[] = [];
  for (let i = 0; i < count; i += 1) {
    if (at + 46 > content.length || view.getUint32(at, true) !== 0x02014b50)
      throw broken('its directory breaks off', fileName);
    const nameLength = view.getUint16(at + 28, true);
    const nameBytes = content.subarray(at + 46, at + 46 + nameLength);
    const flags = view.getUint16(at + 8, true);
    entries.push({
      name: nameOf(nameBytes, (flags & 0x800) !== 0),
      method: view.getUint16(at + 10, true),
      flags,
      crc: view.getUint32(at + 16, true),
      packedSize: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      header: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

/** Place of the end record, before a comment of up to 64 kB; below 0 where there is none. */
function endRecord(view: DataView): number {
  for (let at = view.byteLength - 22; at >= Math.max(0, view.byteLength - 22 - 0xffff); at -= 1)
    if (view.getUint32(at, true) === 0x06054b50) return at;
  return -1;
}

function unpacked(content: Uint8Array, entry: Entry, fileName: string): Uint8Array {
  const { header, method, flags, packedSize, size, crc, name } = entry;
  const place = `${fileName}, ${name.slice(-80)}`;
  const view = new DataView(content.buffer, content.byteOffset, content.byteLength);
  if (header + 30 > content.length || view.getUint32(header, true) !== 0x04034b50)
    throw broken('an entry does not stand where the directory says', place);
  const from = header + 30 + view.getUint16(header + 26, true) + view.getUint16(header + 28, true);
  if (from + packedSize > content.length) throw broken('an entry goes on beyond its end', place);
  if ((flags & 1) !== 0 || (method !== 0 && method !== 8))
    throw new InputProblem(
      'archive-kind',
      (flags & 1) !== 0 ? 'it is locked with a password.' : `it is packed by method ${String(method)}.`,
      place,
      'Unpack it and choose the file inside.',
    );
  const packed = content.subarray(from, from + packedSize);
  let bytes: Uint8Array;
  try {
    bytes = method === 0 ? new Uint8Array(packed) : boundedInflate(new Inflate(), packed, size);
  } catch {
    throw broken('an entry unpacks to something else than the directory says', place);
  }
  if (bytes.length !== size || crc32(bytes) !== crc) throw broken('an entry is not what was packed', place);
  return bytes;
}

/** Absolute, or with a step up, in either system's spelling. */
export const leavesFolder = (name: string): boolean =>
  /^([/\\]|[A-Za-z]:)/.test(name) || name.split(/[/\\]/).includes('..') || name.includes('\0');

function nameOf(bytes: Uint8Array, isUtf8: boolean): string {
  if (!isUtf8) return latin1Text(bytes);
  try {
    return utf8Text(bytes);
  } catch {
    return latin1Text(bytes);
  }
}

const megabytes = (bytes: number): string => String(Math.round(bytes / 1048576));

const tooLarge = (what: string, fileName: string): InputProblem =>
  new InputProblem('archive-too-large', what, fileName, 'Unpack it and choose the file inside.');

const broken = (what: string, place: string): InputProblem =>
  new InputProblem(
    'archive-broken',
    `the archive is damaged or cut short (${what}).`,
    place,
    'Use another copy.',
  );

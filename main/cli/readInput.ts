import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Readable } from 'node:stream';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { type AtlasContent, readAtlasContent } from '../../shared/formats/bundle.ts';
import type { ReadOptions } from '../../shared/formats/readAtlasFile.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { fileProblem } from '../files/fileProblem.ts';

/** The atlas in a file, alone or in a bundle with its pictures. Throws InputProblem. */
export async function readAtlas(path: string, options: ReadOptions = {}): Promise<AtlasDocument> {
  return (await readBundle(path, options)).document;
}

/** The same with what else is in the bundle. */
export async function readBundle(path: string, options: ReadOptions = {}): Promise<AtlasContent> {
  let content: Uint8Array;
  try {
    content = await readFile(path);
  } catch (error) {
    throw fileProblem(error, path);
  }
  return readAtlasContent(content, basename(path), sha256, options);
}

const sha256 = (content: Uint8Array): Promise<string> =>
  Promise.resolve(createHash('sha256').update(content).digest('hex'));

/** All of a stream as JSON. Throws InputProblem. */
export async function readJson(stream: Readable, place: string): Promise<unknown> {
  const parts: Uint8Array[] = [];
  for await (const part of stream) parts.push(Buffer.from(part as string | Uint8Array));
  const text = decoded(Buffer.concat(parts), place);
  if (text.trim() === '')
    throw new InputProblem('json-missing', 'there is nothing to read.', place, 'Give one JSON object.');
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new InputProblem('json-broken', `this is not JSON (${why}).`, place, 'Give one JSON object.');
  }
}

function decoded(content: Uint8Array, place: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(content);
  } catch {
    throw new InputProblem('file-not-text', 'this is not UTF-8 text.', place, 'Choose another file.');
  }
}

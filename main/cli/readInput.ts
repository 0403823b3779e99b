import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Readable } from 'node:stream';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { readAtlasFile, type ReadOptions } from '../../shared/formats/readAtlasFile.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { fileProblem } from '../files/fileProblem.ts';

/** The atlas in a file. Throws InputProblem. */
export async function readAtlas(path: string, options: ReadOptions = {}): Promise<AtlasDocument> {
  let content: Uint8Array;
  try {
    content = await readFile(path);
  } catch (error) {
    throw fileProblem(error, path);
  }
  return readAtlasFile(decoded(content, basename(path)), basename(path), options);
}

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

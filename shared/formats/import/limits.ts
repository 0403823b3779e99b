import { InputProblem } from '../../words/inputProblem.ts';
import { utf8Text } from '../decodedText.ts';

/** Larger files were not made by surveying a course, and would take more memory and time than a person would wait. */
export const MOST_TEXT_BYTES = 64 * 1024 * 1024;
export const MOST_GRID_BYTES = 512 * 1024 * 1024;
export const MOST_FEATURES = 50_000;
export const MOST_POSITIONS = 500_000;
/** The most an outline of an atlas has; see the atlas file. */
export const MOST_IN_OUTLINE = 5_000;

/** UTF-8 text of a file. Throws InputProblem where it is empty, too large or no text. */
export function textOf(content: Uint8Array, fileName: string): string {
  refuseLarge(content.length, fileName, MOST_TEXT_BYTES);
  if (content.length === 0) throw emptyFile(fileName);
  let text: string;
  try {
    text = utf8Text(content);
  } catch {
    throw new InputProblem(
      'file-not-text',
      'this is not UTF-8 text.',
      fileName,
      'Export it again as UTF-8 text, or choose another file.',
    );
  }
  if (text.trim() === '') throw emptyFile(fileName);
  return text;
}

export function emptyFile(fileName: string): InputProblem {
  return new InputProblem('file-empty', 'the file is empty.', fileName, 'Choose another copy.');
}

/** Refuses by size alone, so that it can be asked before anything is read. */
export function refuseLarge(bytes: number, fileName: string, most: number): void {
  if (bytes > most)
    throw new InputProblem(
      'file-too-large',
      `the file has ${String(Math.round(bytes / 1048576))} MB; the most is ${String(most / 1048576)}.`,
      fileName,
      'Cut out the ground of the course before importing it.',
    );
}

export function tooMany(what: string, most: number, fileName: string): InputProblem {
  return new InputProblem(
    'too-many',
    `the file holds more than ${String(most)} ${what}.`,
    fileName,
    'Cut out the ground of the course before importing it.',
  );
}

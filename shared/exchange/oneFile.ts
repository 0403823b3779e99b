import { zipFiles } from '../formats/zip/zipFiles.ts';
import type { MadeFile } from './sendOut.ts';

declare const TextEncoder: new () => { encode(text: string): Uint8Array };

export interface FileToKeep {
  readonly fileName: string;
  readonly content: Uint8Array;
  readonly holds: string;
}

/** What was made as a single file to keep: several that belong together go into one archive. */
export function oneFile(stem: string, files: readonly MadeFile[]): FileToKeep {
  const [first, ...more] = files;
  if (first === undefined) throw new RangeError('nothing was made');
  const named = (file: MadeFile): string => `${stem}.${file.ending}`;
  if (more.length > 0)
    return {
      fileName: `${stem}-${first.ending}.zip`,
      content: zipFiles(Object.fromEntries(files.map((file) => [named(file), file.content]))),
      holds: `${first.holds}, with ${more.map((file) => `its .${file.ending}`).join(', ')}`,
    };
  const { content, holds } = first;
  return {
    fileName: named(first),
    content: typeof content === 'string' ? new TextEncoder().encode(content) : content,
    holds,
  };
}

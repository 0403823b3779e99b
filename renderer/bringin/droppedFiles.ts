import type { FormatsSource } from '../workers/formatsChannel.ts';

/** Files sorted into atlases, which are opened, and everything else, which is brought in. */
export interface SortedFiles {
  readonly atlases: readonly File[];
  readonly others: readonly FormatsSource[];
}

/** An atlas says what it is near its beginning; a foreign file may have any size, so no more than this is looked at. */
const LOOKED_AT_BYTES = 65_536;

/** Sorts what was dropped or chosen by what the files are; a .prj goes with the grid of the same name. */
export async function sortedFiles(files: readonly File[]): Promise<SortedFiles> {
  const isProjection = (file: File): boolean => /\.prj$/i.test(file.name);
  const stem = (name: string): string => name.replace(/\.[^.]*$/, '').toLowerCase();
  const projections = new Map(files.filter(isProjection).map((file) => [stem(file.name), file]));
  const atlases: File[] = [];
  const others: FormatsSource[] = [];
  for (const file of files.filter((one) => !isProjection(one))) {
    if (await isAtlas(file)) atlases.push(file);
    else
      others.push({
        fileName: file.name,
        content: file,
        projection: projections.get(stem(file.name)) ?? null,
      });
  }
  return { atlases, others };
}

async function isAtlas(file: File): Promise<boolean> {
  const start = await file.slice(0, LOOKED_AT_BYTES).text();
  // A bundle is an archive that begins with the atlas itself.
  if (start.startsWith('PK')) return start.includes('atlas.geojson') && !/\.km[lz]$/i.test(file.name);
  return /^\s*\{/.test(start) && /"swale"\s*:\s*\{\s*"format"\s*:/.test(start);
}

import { bringIn } from '../store/arrivals.ts';
import { openDialog } from '../store/dialogs.ts';
import type { Desk } from '../store/desk.ts';
import { sortedFiles } from './droppedFiles.ts';

/** Opens the atlases among some files, and shows what the others would bring in. */
export async function takeFiles(desk: Desk, files: readonly File[]): Promise<void> {
  const { atlases, others } = await sortedFiles(files);
  if (atlases.length > 0) openDialog(null);
  for (const file of atlases) await desk.openDropped(file);
  if (others.length > 0) bringIn(others);
}

import { byLabel } from '../../shared/atlas/byLabel.ts';

/** The id of the record that was chosen, or of the first; null where there is none. */
export function chosenOf(
  records: readonly { readonly id: string; readonly label: string }[],
  wanted: string | undefined,
): string | null {
  return (records.find(({ id }) => id === wanted) ?? records.toSorted(byLabel)[0])?.id ?? null;
}

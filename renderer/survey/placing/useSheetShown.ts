import { useDeferredValue, useMemo } from 'react';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import { shownSetDown } from '../../../shared/atlas/settingDown.ts';
import type { PlacingState } from './placingState.ts';

/** The document as the plate shows it: as it is, or set down where it is being placed. */
export function useSheetShown(document: AtlasDocument, { subject, affine }: PlacingState): AtlasDocument {
  // A large atlas follows its outline a little later.
  const lies = useDeferredValue(affine);
  const over = subject?.kind === 'sheet' ? subject.over : null;
  return useMemo(
    () => (over === null ? document : shownSetDown(document, over, lies)),
    [document, over, lies],
  );
}

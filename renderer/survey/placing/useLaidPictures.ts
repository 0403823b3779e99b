import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { frameOf, recordsOf } from '../../../shared/atlas/document.ts';
import { pictureAffine, pictureOutline } from '../../../shared/atlas/pictures.ts';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import type { LaidPicture } from '../../map/pictureLayer.ts';
import { pictureFiles, showPictures } from '../../store/pictureFiles.ts';
import type { PlacingState } from './placingState.ts';

/** The pictures of a document that are to be seen and can be, the one in hand as it lies now. */
export function useLaidPictures(document: AtlasDocument, placing: PlacingState): readonly LaidPicture[] {
  const files = useStore(pictureFiles);
  const records = useMemo(() => recordsOf(document, 'picture'), [document]);
  useEffect(() => showPictures(records), [records]);
  const { subject, affine, opacity } = placing;
  const heldId = subject?.kind === 'picture' ? subject.id : null;
  return useMemo(() => {
    const frame = frameOf(document);
    const laid = records.flatMap((record): LaidPicture[] => {
      const file = files[record.sha256];
      const held = record.id === heldId;
      if (file?.state !== 'ready' || !(record.shown || held)) return [];
      const { id, widthPx, heightPx } = record;
      const lies = held ? affine : pictureAffine(frame, record);
      return [
        {
          ...{ id, widthPx, heightPx, url: file.url },
          opacity: held ? opacity : record.opacity,
          outline: pictureOutline(lies, record),
        },
      ];
    });
    return laid.length === 0 ? noPictures : laid;
  }, [document, records, files, heldId, affine, opacity]);
}

/** The same empty list every time, so that the map is not told anew. */
const noPictures: readonly LaidPicture[] = [];

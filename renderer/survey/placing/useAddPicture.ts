import { useCallback, useEffect, useRef } from 'react';
import type { Edit } from '../../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../../shared/atlas/records.ts';
import { openDialog } from '../../store/dialogs.ts';
import { tell, troubleOf } from '../../store/notices.ts';
import { atlasStore, documentOfAtlas } from '../../store/openAtlas.ts';
import { keptPictures } from '../../store/pictureFiles.ts';
import { sessionStore } from '../../store/session.ts';
import { addPicture } from './addPicture.ts';
import { placing } from './placingHand.ts';

interface Target {
  readonly id: string;
  readonly document: AtlasDocument;
  readonly readOnly: boolean;
}

/** Lays a picture file under the drawing and begins to place it; null where nothing can be changed. */
export function useAddPicture(
  atlas: Target | null,
  edit: (edit: Edit) => void,
): ((file: File) => void) | null {
  const target = useRef(atlas);
  useEffect(() => {
    target.current = atlas;
  });
  const add = useCallback(
    (file: File): void => {
      const into = target.current;
      if (into === null) return;
      addPicture(file, into.document, keptPictures(), placing.view()).then(
        ({ edit: laid, id, note }) => {
          // Another atlas may have been opened while the picture was read.
          if (target.current?.id !== into.id) return;
          openDialog(null);
          sessionStore.setState({ workspace: 'survey' });
          edit(laid);
          const { open } = atlasStore.getState();
          if (open !== null) placing.beginPicture(documentOfAtlas(open), id, note);
        },
        (error: unknown) => {
          openDialog(null);
          tell(troubleOf(error));
        },
      );
    },
    [edit],
  );
  return atlas === null || atlas.readOnly ? null : add;
}

import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { Edit } from '../shared/atlas/edits.ts';
import type { AtlasDocument } from '../shared/atlas/records.ts';
import { BringInDialog } from './bringin/BringInDialog.tsx';
import { LevelBookDialog } from './bringin/LevelBookDialog.tsx';
import { PlaneByEyeDialog } from './bringin/PlaneByEyeDialog.tsx';
import { SendOutDialog } from './bringin/SendOutDialog.tsx';
import { takeFiles } from './bringin/takeFiles.ts';
import type { UnitsPreference } from '../shared/units/preference.ts';
import { creditLayer } from './survey/creditLayer.ts';
import type { Desk } from './store/desk.ts';
import { arrivalStore } from './store/arrivals.ts';
import { dialogStore, openDialog } from './store/dialogs.ts';
import { sessionStore } from './store/session.ts';
import type { Hand } from './survey/hand.ts';
import { HolesDialog } from './survey/HolesDialog.tsx';
import { LayersDialog } from './survey/LayersDialog.tsx';
import { LibraryDialog } from './survey/LibraryDialog.tsx';
import { NewAtlasDialog } from './survey/NewAtlasDialog.tsx';
import { PlaceDialog } from './survey/PlaceDialog.tsx';
import { PictureShelf } from './survey/placing/PictureShelf.tsx';
import { pointing } from './survey/pointingHand.ts';
import { placing } from './survey/placing/placingHand.ts';
import { useAddPicture } from './survey/placing/useAddPicture.ts';
import { usePictureDrop } from './survey/placing/usePictureDrop.ts';
import { homeOf } from './survey/surveyView.ts';

interface DialogsProps {
  readonly desk: Desk;
  readonly hand: Hand;
  readonly atlas: {
    readonly id: string;
    readonly document: AtlasDocument;
    readonly holeId: string | null;
    readonly readOnly: boolean;
  } | null;
  readonly units: UnitsPreference;
  readonly edit: (edit: Edit) => void;
}

/** The window over the window, if one is open. */
export function Dialogs({ desk, hand, atlas, edit, units }: DialogsProps): React.JSX.Element | null {
  const { open } = useStore(dialogStore);
  const close = (): void => openDialog(null);
  const layingSheet = useStore(placing.store, ({ subject }) => subject?.kind === 'sheet');
  const waiting = useStore(arrivalStore, ({ waiting: files }) => files.length > 0);
  // Files set aside until the atlas is placed come back by themselves.
  useEffect(() => {
    if (waiting && atlas !== null && open === null && !layingSheet) openDialog('bringIn');
  }, [waiting, atlas, open, layingSheet]);
  const add = useAddPicture(atlas, edit);
  usePictureDrop(add);
  const placeBy = (begin: () => void): void => {
    close();
    sessionStore.setState({ workspace: 'survey' });
    begin();
  };
  switch (open) {
    case null:
      return null;
    case 'library':
      return <LibraryDialog desk={desk} openId={atlas?.id ?? null} close={close} />;
    case 'new':
      return <NewAtlasDialog close={close} start={(asked) => void desk.startNew(asked)} />;
    case 'layers':
      return (
        <LayersDialog
          placed={atlas !== null && isPlaced(atlas.document)}
          close={close}
          credit={(layer) => {
            const step = atlas === null || atlas.readOnly ? null : creditLayer(atlas.document, layer);
            if (step !== null) edit(step);
          }}
          shift={(layer) => placeBy(() => placing.beginSource(layer))}
        >
          {atlas !== null && (
            <PictureShelf
              document={atlas.document}
              readOnly={atlas.readOnly}
              edit={edit}
              add={(file) => add?.(file)}
              place={(id) => placeBy(() => placing.beginPicture(atlas.document, id))}
            />
          )}
        </LayersDialog>
      );
    case 'place':
      return atlas === null ? null : (
        <PlaceDialog
          document={atlas.document}
          edit={edit}
          close={close}
          overMap={(at, turnDeg) =>
            placeBy(() => placing.beginSheet(at, turnDeg, homeOf(atlas.document, null)))
          }
        />
      );
    case 'bringIn':
    case 'pastePoints':
      return atlas === null ? null : (
        <BringInDialog
          {...atlas}
          units={units}
          pasting={open === 'pastePoints'}
          edit={edit}
          takeFiles={(files) => void takeFiles(desk, files)}
          close={close}
        />
      );
    case 'levelBook':
      return atlas === null ? null : (
        <LevelBookDialog
          {...atlas}
          {...{ units, edit, close }}
          showPlaces={(...asked) => placeBy(() => pointing.begin(...asked))}
        />
      );
    case 'planeByEye':
      return atlas === null ? null : <PlaneByEyeDialog {...atlas} edit={edit} close={close} />;
    case 'sendOut':
      return atlas === null ? null : (
        <SendOutDialog
          document={atlas.document}
          holeId={atlas.holeId}
          units={units}
          keep={({ fileName, content }) => desk.keep(fileName, content)}
          close={close}
        />
      );
    case 'holes':
      return atlas === null ? null : (
        <HolesDialog
          document={atlas.document}
          holeId={atlas.holeId}
          readOnly={atlas.readOnly}
          close={close}
          edit={edit}
          goTo={(holeId) => sessionStore.setState({ holeId })}
          drawLine={(holeId) => {
            sessionStore.setState({ workspace: 'survey' });
            hand.drawFor({ kind: 'lineOfPlay', holeId }, 'ridge');
          }}
        />
      );
  }
}

const isPlaced = ({ records }: AtlasDocument): boolean => {
  const header = records.get('atlas');
  return header?.type === 'atlas' && header.placed;
};

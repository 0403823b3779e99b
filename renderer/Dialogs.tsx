import { useStore } from 'zustand';
import type { Edit } from '../shared/atlas/edits.ts';
import type { AtlasDocument } from '../shared/atlas/records.ts';
import { creditLayer } from './survey/creditLayer.ts';
import type { Desk } from './store/desk.ts';
import { dialogStore, openDialog } from './store/dialogs.ts';
import { sessionStore } from './store/session.ts';
import type { Hand } from './survey/hand.ts';
import { HolesDialog } from './survey/HolesDialog.tsx';
import { LayersDialog } from './survey/LayersDialog.tsx';
import { LibraryDialog } from './survey/LibraryDialog.tsx';
import { NewAtlasDialog } from './survey/NewAtlasDialog.tsx';
import { PlaceDialog } from './survey/PlaceDialog.tsx';

interface DialogsProps {
  readonly desk: Desk;
  readonly hand: Hand;
  readonly atlas: {
    readonly id: string;
    readonly document: AtlasDocument;
    readonly holeId: string | null;
    readonly readOnly: boolean;
  } | null;
  readonly edit: (edit: Edit) => void;
}

/** The window over the window, if one is open. */
export function Dialogs({ desk, hand, atlas, edit }: DialogsProps): React.JSX.Element | null {
  const { open } = useStore(dialogStore);
  const close = (): void => openDialog(null);
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
        />
      );
    case 'place':
      return atlas === null ? null : <PlaceDialog document={atlas.document} edit={edit} close={close} />;
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

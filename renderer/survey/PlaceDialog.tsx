import { useState } from 'react';
import { headerOf } from '../../shared/atlas/document.ts';
import type { Edit } from '../../shared/atlas/edits.ts';
import { placeAtlas } from '../../shared/atlas/moving.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { LonLat } from '../../shared/geometry/points.ts';
import { parseDegrees } from '../../shared/units/parse.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from './Field.tsx';
import { positionTyped } from './NewAtlasDialog.tsx';
import { trimmed } from './words.ts';

interface PlaceDialogProps {
  readonly document: AtlasDocument;
  readonly edit: (edit: Edit) => void;
  readonly close: () => void;
  /** Lets the sheet be moved and turned over a map about a place, by hand. */
  readonly overMap: (at: LonLat, turnDeg: number) => void;
}

/** Sets the whole sheet down on the earth: where its middle lies, and how far it is turned. Shapes keep their size. */
export function PlaceDialog({ document, edit, close, overMap }: PlaceDialogProps): React.JSX.Element {
  const { placed, anchor } = headerOf(document);
  const [lat, setLat] = useState(placed ? trimmed(anchor[1], 7) : '');
  const [lon, setLon] = useState(placed ? trimmed(anchor[0], 7) : '');
  const [turn, setTurn] = useState('0');
  const [trouble, setTrouble] = useState<string | null>(null);
  const place = (byHand: boolean): void => {
    try {
      const at = positionTyped(lat, lon);
      const turnDeg = parseDegrees(turn, 'Turned by');
      if (byHand) overMap(at, turnDeg);
      else {
        edit(placeAtlas('placed the atlas on the earth', at, turnDeg));
        close();
      }
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble(error.message);
    }
  };
  return (
    <Dialog title="Place it on the earth" close={close}>
      <form
        className="dialog-form"
        onSubmit={(event) => {
          event.preventDefault();
          place(false);
        }}
      >
        <p>
          The point of the sheet where its grid begins goes to this place. Every shape keeps its size. Where
          you know the place only roughly, move and turn the sheet over a map from there.
        </p>
        <Field label="Latitude" value={lat} commit={setLat} />
        <Field label="Longitude" value={lon} commit={setLon} />
        <Field label="Turned by" unit="°" value={turn} commit={setTurn} />
        {trouble !== null && (
          <p className="field-trouble" role="alert">
            {trouble}
          </p>
        )}
        <div className="dialog-actions">
          <button type="submit" className="button filled">
            Place it
          </button>
          <button type="button" className="button" onClick={() => place(true)}>
            Move it there over a map
          </button>
          <button type="button" className="link-button" onClick={close}>
            Cancel
          </button>
        </div>
      </form>
    </Dialog>
  );
}

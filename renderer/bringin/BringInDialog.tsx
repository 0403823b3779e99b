import { FileInput } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { arrivalStore, takeArrivals } from '../store/arrivals.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { FormatsClient } from '../workers/formatsClient.ts';
import { BringIn, comingIn, previewOf } from './bringIn.ts';
import { FileTabs } from './FileTabs.tsx';
import { FileSheet } from './FileSheet.tsx';
import { PasteField } from './PasteField.tsx';
import './bringin.css';

export interface BringInDialogProps {
  readonly document: AtlasDocument;
  readonly holeId: string | null;
  readonly units: UnitsPreference;
  readonly readOnly: boolean;
  /** Begins with a place to paste a list of points. */
  readonly pasting: boolean;
  readonly edit: (edit: Edit) => void;
  /** Opens the atlases among some files and hands over the others. */
  readonly takeFiles: (files: readonly File[]) => void;
  readonly close: () => void;
}

/** What files or a pasted list would bring into the atlas, before anything changes; then one undoable step. */
export function BringInDialog(props: BringInDialogProps): React.JSX.Element {
  const { document, holeId, units, readOnly, pasting, edit, takeFiles, close } = props;
  const [bringIn] = useState(() => new BringIn(new FormatsClient(), document));
  const { files, shown } = useStore(bringIn.store);
  const { waiting } = useStore(arrivalStore);
  const chooser = useRef<HTMLInputElement>(null);
  useEffect(() => bringIn.onto(document), [bringIn, document]);
  useEffect(() => {
    if (waiting.length > 0) bringIn.add(takeArrivals(), holeId);
  }, [bringIn, waiting, holeId]);
  useEffect(() => () => bringIn.close(), [bringIn]);

  const file = files.find(({ key }) => key === shown);
  const reading = files.some(({ reading: { at } }) => at === 'reading' || at === 'waiting');
  const count = files.reduce((sum, one) => {
    const preview = previewOf(one);
    return preview === null ? sum : sum + comingIn(document, preview, one.selection);
  }, 0);
  const bring = (): void => {
    const step = bringIn.edit();
    if (step === null) return;
    edit(step);
    close();
  };
  return (
    <Dialog title={pasting ? 'Paste points' : 'Bring in a file'} close={close} wide>
      <input
        ref={chooser}
        type="file"
        multiple
        hidden
        onChange={({ target }) => {
          takeFiles([...(target.files ?? [])]);
          target.value = '';
        }}
      />
      {files.length > 1 && <FileTabs files={files} shown={shown} bringIn={bringIn} />}
      {file !== undefined ? (
        <FileSheet key={file.key} file={file} document={document} units={units} bringIn={bringIn} />
      ) : pasting ? (
        <PasteField take={(source) => bringIn.add([{ source }], holeId)} />
      ) : (
        <div className="bringin-empty">
          <p>
            Choose files, or drop them anywhere on the window. What they would bring is shown first; nothing
            changes until you say so, and undo takes all of it back in one step.
          </p>
          <ul>
            <li>Maps: GeoJSON, OpenStreetMap XML or Overpass JSON, KML, KMZ</li>
            <li>Walked outlines and waypoints: GPX</li>
            <li>Lists of points, slopes and level books: CSV</li>
            <li>Elevation: GeoTIFF, ESRI ASCII grid with its .prj</li>
          </ul>
        </div>
      )}
      <div className="dialog-actions bringin-actions">
        {files.length > 0 && (
          <button
            type="button"
            className="button filled"
            disabled={reading || readOnly || count === 0}
            onClick={bring}
          >
            {count === 0
              ? 'Nothing to bring in'
              : `Bring in ${String(count)} ${count === 1 ? 'thing' : 'things'}`}
          </button>
        )}
        {!pasting && (
          <button
            type="button"
            className={files.length === 0 ? 'button filled' : 'button'}
            onClick={() => chooser.current?.click()}
          >
            <FileInput size={18} strokeWidth={1.9} aria-hidden />
            {files.length === 0 ? 'Choose files' : 'Add files'}
          </button>
        )}
        <button type="button" className="link-button" onClick={close}>
          Cancel
        </button>
        {readOnly && <span>This atlas can only be read here.</span>}
      </div>
    </Dialog>
  );
}

import { useRef, useState } from 'react';
import { useStore } from 'zustand';
import { recordsOf } from '../../../shared/atlas/document.ts';
import { type Edit, putRecords, removeRecords } from '../../../shared/atlas/edits.ts';
import type { AtlasDocument, PictureRecord } from '../../../shared/atlas/records.ts';
import { pictureFiles } from '../../store/pictureFiles.ts';
import { Field } from '../Field.tsx';
import { numberTyped } from '../numberTyped.ts';
import { PICTURE_TYPES } from './addPicture.ts';
import './placing.css';

interface PictureShelfProps {
  readonly document: AtlasDocument;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
  readonly add: (file: File) => void;
  readonly place: (id: string) => void;
}

/** The pictures of the atlas: seen or not, how, where they lie and whose they are. */
export function PictureShelf({ document, readOnly, edit, add, place }: PictureShelfProps): React.JSX.Element {
  const files = useStore(pictureFiles);
  const [opened, setOpened] = useState<string | null>(null);
  const chooser = useRef<HTMLInputElement>(null);
  const change = (picture: PictureRecord, words: string, changed: Partial<PictureRecord>): void =>
    edit(putRecords(`${words} the picture ${picture.name}`, [{ ...picture, ...changed }]));
  return (
    <section aria-label="Pictures">
      <h3>Pictures of this atlas</h3>
      <ul className="shelf layers">
        {recordsOf(document, 'picture').map((picture) => {
          const state = files[picture.sha256]?.state;
          return (
            <li key={picture.id}>
              <div className="layer-head">
                <label className="choice">
                  <input
                    type="checkbox"
                    checked={picture.shown}
                    disabled={readOnly}
                    onChange={({ target }) =>
                      change(picture, target.checked ? 'showed' : 'hid', { shown: target.checked })
                    }
                  />
                  <strong>{picture.name}</strong>
                </label>
                <span className="layer-actions">
                  {!readOnly && (
                    <button type="button" className="link-button" onClick={() => place(picture.id)}>
                      Place
                    </button>
                  )}
                  <button
                    type="button"
                    className="link-button"
                    aria-expanded={opened === picture.id}
                    onClick={() => setOpened(opened === picture.id ? null : picture.id)}
                  >
                    Settings
                  </button>
                </span>
              </div>
              {(state === 'missing' || state === 'broken') && (
                <p className="field-trouble">
                  {state === 'missing'
                    ? 'The file of this picture is not here. Open the bundle it came with, or add it again.'
                    : 'The file of this picture is damaged. Add it again from another copy.'}
                </p>
              )}
              {opened === picture.id && (
                <div className="layer-fields">
                  <Field
                    label="Name"
                    value={picture.name}
                    readOnly={readOnly}
                    commit={(name) => change(picture, 'renamed', { name })}
                  />
                  <Field
                    label="Opacity"
                    unit="%"
                    value={String(Math.round(picture.opacity * 100))}
                    readOnly={readOnly}
                    commit={(typed) =>
                      change(picture, 'faded', { opacity: numberTyped(typed, 'Opacity', 0, 100) / 100 })
                    }
                  />
                  <Field
                    label="Whose it is"
                    value={picture.attribution}
                    readOnly={readOnly}
                    commit={(attribution) => change(picture, 'named the owner of', { attribution })}
                  />
                  <Field
                    label="Licence"
                    value={picture.licence}
                    readOnly={readOnly}
                    commit={(licence) => change(picture, 'named the licence of', { licence })}
                  />
                  {!readOnly && (
                    <div className="held-actions">
                      <button
                        type="button"
                        className="link-button"
                        onClick={() =>
                          edit(removeRecords(`took away the picture ${picture.name}`, [picture.id]))
                        }
                      >
                        Take it away
                      </button>
                    </div>
                  )}
                </div>
              )}
            </li>
          );
        })}
      </ul>
      {!readOnly && (
        <div className="dialog-actions">
          <button type="button" className="button" onClick={() => chooser.current?.click()}>
            Add a picture
          </button>
          <input
            ref={chooser}
            type="file"
            hidden
            accept={PICTURE_TYPES}
            aria-label="Picture file"
            onChange={({ target }) => {
              const [file] = target.files ?? [];
              if (file !== undefined) add(file);
            }}
          />
        </div>
      )}
      <p className="hint">
        A photo, a scan or an image from above, to trace over; JPEG, PNG or WebP. It may also be dropped on
        the window. It stays on this computer, and goes into the file when the atlas is saved.
      </p>
    </section>
  );
}

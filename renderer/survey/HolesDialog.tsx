import { ArrowDown, ArrowUp, Trash2 } from 'lucide-react';
import { headerOf, holesInOrder, recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, putRecords, removeRecords } from '../../shared/atlas/edits.ts';
import type { AtlasDocument, HoleRecord } from '../../shared/atlas/records.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from './Field.tsx';
import { newHole } from './making.ts';

interface HolesDialogProps {
  readonly document: AtlasDocument;
  readonly holeId: string | null;
  readonly readOnly: boolean;
  readonly close: () => void;
  readonly edit: (edit: Edit) => void;
  readonly goTo: (holeId: string) => void;
  /** Draws the line of play of this hole on the plate. */
  readonly drawLine: (holeId: string) => void;
}

/** The holes of a course or stations of a practice ground: order, label, name, par, green and line of play. */
export function HolesDialog(props: HolesDialogProps): React.JSX.Element {
  const { document, holeId, readOnly, close, edit, goTo, drawLine } = props;
  const holes = holesInOrder(document);
  const practice = headerOf(document).kind === 'practiceGround';
  const one = practice ? 'station' : 'hole';
  const greens = recordsOf(document, 'area').filter(({ kind }) => kind === 'green');
  const swap = (at: number, by: -1 | 1): void => {
    const a = holes[at];
    const b = holes[at + by];
    if (a === undefined || b === undefined) return;
    // Orders may be equal in a file from elsewhere: the whole list is numbered anew where they are.
    const order = holes.toSpliced(at, 1).toSpliced(at + by, 0, a);
    edit(
      putRecords(
        `moved ${one} ${a.label}`,
        order.map((hole, i) => ({ ...hole, order: i + 1 })),
      ),
    );
  };
  const put = (hole: HoleRecord, annotation: string, change: Partial<HoleRecord>): void =>
    edit(putRecords(annotation, [{ ...hole, ...change }]));
  return (
    <Dialog title={practice ? 'Stations' : 'Holes'} close={close}>
      <ol className="holes">
        {holes.map((hole, at) => (
          <li key={hole.id} aria-current={hole.id === holeId}>
            <Field
              label="Label"
              value={hole.label}
              readOnly={readOnly}
              commit={(label) => {
                if (label === '' || holes.some((other) => other.id !== hole.id && other.label === label))
                  throw new InputProblem(
                    'label-taken',
                    label === '' ? 'It needs a label.' : `Another one is ${label} already.`,
                    'Label',
                    'Give each its own.',
                  );
                put(hole, `relabelled ${one} ${hole.label}`, { label });
              }}
            />
            <Field
              label="Name"
              value={hole.name}
              readOnly={readOnly}
              commit={(name) => put(hole, `named ${one} ${hole.label}`, { name })}
            />
            {!practice && (
              <Field
                label="Par"
                value={hole.par === null ? '' : String(hole.par)}
                readOnly={readOnly}
                commit={(typed) => put(hole, `set the par of hole ${hole.label}`, { par: parTyped(typed) })}
              />
            )}
            <div className="field">
              <label htmlFor={`green-${hole.id}`}>Green</label>
              <select
                id={`green-${hole.id}`}
                value={hole.greenId ?? ''}
                disabled={readOnly}
                onChange={({ target }) =>
                  put(hole, `set the green of ${one} ${hole.label}`, {
                    greenId: target.value === '' ? null : target.value,
                  })
                }
              >
                <option value="">none yet</option>
                {greens.map(({ id, name }, i) => (
                  <option key={id} value={id}>
                    {name === '' ? `green ${String(i + 1)}` : name}
                  </option>
                ))}
              </select>
            </div>
            <div className="held-actions">
              <button
                type="button"
                className="link-button"
                onClick={() => {
                  goTo(hole.id);
                  close();
                }}
              >
                Go to
              </button>
              {!readOnly && (
                <>
                  <button
                    type="button"
                    className="link-button"
                    onClick={() => {
                      goTo(hole.id);
                      drawLine(hole.id);
                      close();
                    }}
                  >
                    {hole.line === null ? 'Draw' : 'Redraw'} its line of play
                  </button>
                  <span className="holes-order">
                    <button
                      type="button"
                      className="icon-button"
                      aria-label={`Move ${hole.label} up`}
                      disabled={at === 0}
                      onClick={() => swap(at, -1)}
                    >
                      <ArrowUp size={17} strokeWidth={1.9} aria-hidden />
                    </button>
                    <button
                      type="button"
                      className="icon-button"
                      aria-label={`Move ${hole.label} down`}
                      disabled={at === holes.length - 1}
                      onClick={() => swap(at, 1)}
                    >
                      <ArrowDown size={17} strokeWidth={1.9} aria-hidden />
                    </button>
                    <button
                      type="button"
                      className="icon-button"
                      aria-label={`Take ${hole.label} out with its flags and balls`}
                      title="Take it out with its flags and balls; its ground stays"
                      onClick={() => edit(removeRecords(`took out ${one} ${hole.label}`, [hole.id]))}
                    >
                      <Trash2 size={17} strokeWidth={1.9} aria-hidden />
                    </button>
                  </span>
                </>
              )}
            </div>
          </li>
        ))}
      </ol>
      {!readOnly && (
        <div className="dialog-actions">
          <button
            type="button"
            className="button filled"
            onClick={() => {
              const hole = newHole(document, crypto.randomUUID());
              edit(putRecords(`added ${one} ${hole.label}`, [hole]));
              goTo(hole.id);
            }}
          >
            Add a {one}
          </button>
        </div>
      )}
    </Dialog>
  );
}

function parTyped(typed: string): number | null {
  if (typed === '') return null;
  const par = Number(typed);
  if (!Number.isInteger(par) || par < 2 || par > 9)
    throw new InputProblem(
      'bad-par',
      `"${typed.slice(0, 20)}" is no par.`,
      'Par',
      'Give a whole number from 2 to 9, or nothing.',
    );
  return par;
}

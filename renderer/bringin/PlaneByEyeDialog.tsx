import { useState } from 'react';
import { findRecord, frameOf, recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, putRecords, removeRecords } from '../../shared/atlas/edits.ts';
import { parsePlaneByEye } from '../../shared/atlas/planeByEye.ts';
import type { AreaRecord, AtlasDocument, HoleRecord, PlaneByEye } from '../../shared/atlas/records.ts';
import { bearingDeg } from '../../shared/geometry/bearing.ts';
import { boundingBox, centroid, distanceM, pointInPolygon } from '../../shared/geometry/ring.ts';
import { bearing, slope, withUnit } from '../../shared/units/format.ts';
import { parseDegrees } from '../../shared/units/parse.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { Dialog } from '../ui/Dialog.tsx';
import './bringin.css';

interface PlaneByEyeDialogProps {
  readonly document: AtlasDocument;
  readonly holeId: string | null;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
  readonly close: () => void;
}

/** How a green seems to lie as a whole: weak evidence, but better than none, and soon outweighed by readings. */
export function PlaneByEyeDialog(props: PlaneByEyeDialogProps): React.JSX.Element {
  const { document, holeId, readOnly, edit, close } = props;
  const hole = holeId === null ? undefined : findRecord(document, 'hole', holeId);
  const greens = recordsOf(document, 'area').filter(({ kind }) => kind === 'green');
  const [greenId, setGreenId] = useState(hole?.greenId ?? greens[0]?.id ?? '');
  const green = greens.find(({ id }) => id === greenId);
  const [typed, setTyped] = useState('');
  const [playing, setPlaying] = useState(() => {
    const known = green === undefined ? null : playedIn(document, green);
    return known === null ? '' : String(Math.round(known));
  });
  const [trouble, setTrouble] = useState<string | null>(null);
  const there = green === undefined ? [] : planesOn(document, green);
  const put = (): void => {
    if (green === undefined) return;
    try {
      const plane = parsePlaneByEye(typed, parseDegrees(playing, 'You play in towards'), 'How it lies');
      const ring = (green.rings[0] ?? []).map(frameOf(document).toPlane);
      const middle = centroid(ring);
      const record: PlaneByEye = {
        type: 'planeByEye',
        id: crypto.randomUUID(),
        at: frameOf(document).toLonLat(middle),
        reachM: Math.max(
          1,
          ring.reduce((most, corner) => Math.max(most, distanceM(middle, corner)), 0),
        ),
        ...plane,
      };
      edit(putRecords(`put in a plane by eye, ${withUnit(slope(plane.slopePct))}`, [record]));
      close();
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      setTrouble(error.message);
    }
  };
  if (greens.length === 0)
    return (
      <Dialog title="Plane by eye" close={close}>
        <p>There is no green yet to say it of. Trace one first: press G in Survey.</p>
      </Dialog>
    );
  return (
    <Dialog title="Plane by eye" close={close}>
      <form
        className="dialog-form"
        onSubmit={(event) => {
          event.preventDefault();
          put();
        }}
      >
        <p>
          How the green lies as a whole, where nothing better is at hand. It counts for little beside measured
          heights and slopes.
        </p>
        <div className="bringin-fields">
          <label>
            <span>Green</span>
            <select value={greenId} onChange={({ target }) => setGreenId(target.value)}>
              {greens.map((one) => (
                <option key={one.id} value={one.id}>
                  {greenWords(document, one)}
                </option>
              ))}
            </select>
          </label>
          <label>
            <span>You play in towards, °</span>
            <input type="text" value={playing} onChange={({ target }) => setPlaying(target.value)} />
          </label>
          <label>
            <span>How it lies</span>
            <input
              type="text"
              value={typed}
              placeholder="2 % back to front"
              onChange={({ target }) => setTyped(target.value)}
            />
          </label>
        </div>
        {trouble !== null && (
          <p className="field-trouble" role="alert">
            {trouble}
          </p>
        )}
        {there.length > 0 && (
          <ul className="shelf">
            {there.map((plane) => (
              <li key={plane.id}>
                <span className="shelf-open">
                  {withUnit(slope(plane.slopePct))}, falling towards{' '}
                  {withUnit(bearing(plane.downhillBearingDeg))}
                </span>
                <button
                  type="button"
                  className="link-button"
                  disabled={readOnly}
                  onClick={() => edit(removeRecords('took out a plane by eye', [plane.id]))}
                >
                  Take it out
                </button>
              </li>
            ))}
          </ul>
        )}
        <div className="dialog-actions">
          <button type="submit" className="button filled" disabled={readOnly || typed.trim() === ''}>
            Put it in
          </button>
          <button type="button" className="link-button" onClick={close}>
            Cancel
          </button>
        </div>
      </form>
    </Dialog>
  );
}

const holesOf = (document: AtlasDocument, { id }: AreaRecord): readonly HoleRecord[] =>
  recordsOf(document, 'hole').filter(({ greenId }) => greenId === id);

function greenWords(document: AtlasDocument, green: AreaRecord): string {
  const labels = holesOf(document, green).map(({ label }) => label);
  const of = labels.length === 0 ? 'a green of no hole' : `the green of ${labels.join(' and ')}`;
  return green.name === '' ? of : `${green.name}, ${of}`;
}

/** The bearing of the last stretch of the line of play; null where none is drawn. */
function playedIn(document: AtlasDocument, green: AreaRecord): number | null {
  const line = holesOf(document, green).find((hole) => hole.line !== null)?.line ?? [];
  const [from, to] = line.slice(-2).map(frameOf(document).toPlane);
  return from === undefined || to === undefined ? null : bearingDeg(from, to);
}

function planesOn(document: AtlasDocument, green: AreaRecord): readonly PlaneByEye[] {
  const { toPlane } = frameOf(document);
  const polygon = green.rings.map((ring) => ring.map(toPlane));
  const box = boundingBox(polygon[0] ?? []);
  return box === null
    ? []
    : recordsOf(document, 'planeByEye').filter(({ at }) => pointInPolygon(toPlane(at), polygon));
}

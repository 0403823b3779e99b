import { Flag, Plus } from 'lucide-react';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { findRecord, recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, putRecords } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { LonLat } from '../../shared/geometry/points.ts';
import { flagWords, lieText, stanceSlope } from '../../shared/playbook/placeWords.ts';
import { distance } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { MapButtons } from '../map/MapButtons.tsx';
import { type MapControls, PlateMap } from '../map/PlateMap.tsx';
import { byLabel } from '../store/byLabel.ts';
import { nextLetter, nextNumber } from '../store/labels.ts';
import { movePlace } from '../store/edits.ts';
import { derivedStore } from '../store/planStore.ts';
import { sessionStore } from '../store/session.ts';
import { Trouble } from '../ui/Trouble.tsx';
import { holeWords } from '../ui/words.ts';
import { BallForm } from './BallForm.tsx';
import { DayForm } from './DayForm.tsx';
import './positions.css';

interface PositionsWorkspaceProps {
  readonly document: AtlasDocument;
  readonly holeId: string;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
  readonly hold: (held: { readonly id: string; readonly at: LonLat } | null) => void;
}

type Placing = 'ballPosition' | 'holeLocation' | null;

/** Where balls stop and flags stand: pinned, named and moved on the plate. */
export function PositionsWorkspace(props: PositionsWorkspaceProps): React.JSX.Element {
  const { document, holeId, units, largeType, readOnly, edit, hold } = props;
  const { scene, relief, groundReady, sceneTrouble, ballId, flagId, held } = useStore(derivedStore);
  const [placing, setPlacing] = useState<Placing>(null);
  const [controls, setControls] = useState<MapControls | null>(null);
  const hole = findRecord(document, 'hole', holeId);
  const balls = recordsOf(document, 'ballPosition').filter((one) => one.holeId === holeId);
  const flags = recordsOf(document, 'holeLocation').filter((one) => one.holeId === holeId);
  const ball = balls.find(({ id }) => id === ballId);
  const flag = scene?.flags.find(({ record }) => record.id === flagId);
  const days = recordsOf(document, 'conditions');
  const day = days.find(({ inUse }) => inUse) ?? days[0];

  const choose = (id: string, kind: 'ball' | 'flag'): void => {
    const key = kind === 'ball' ? 'ballByHole' : 'flagByHole';
    sessionStore.setState({ [key]: { ...sessionStore.getState()[key], [holeId]: id } });
  };
  const put = (at: LonLat): void => {
    const id = crypto.randomUUID();
    if (placing === 'ballPosition') {
      const label = nextNumber(balls);
      edit(
        putRecords(`pinned ball ${label}`, [
          { type: placing, id, holeId, label, name: '', at, lie: 'clean', coverOverride: null },
        ]),
      );
      choose(id, 'ball');
    } else if (placing === 'holeLocation') {
      const label = nextLetter(flags);
      edit(putRecords(`stood flag ${label}`, [{ type: placing, id, holeId, label, name: '', at }]));
      choose(id, 'flag');
    }
    setPlacing(null);
  };
  useEffect(() => {
    if (placing === null) return undefined;
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') setPlacing(null);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [placing]);

  return (
    <div className="positions">
      <h1 className="unseen">
        Positions of {hole === undefined ? 'the hole' : holeWords(hole.label, hole.name)}
      </h1>
      <section className="positions-balls" aria-label="Ball positions">
        <div className="side-head">
          <h2>Ball positions</h2>
          {!readOnly && (
            <button
              type="button"
              className="button"
              aria-pressed={placing === 'ballPosition'}
              onClick={() => setPlacing(placing === 'ballPosition' ? null : 'ballPosition')}
            >
              <Plus size={17} strokeWidth={1.9} aria-hidden /> Pin a ball
            </button>
          )}
        </div>
        <table className="places">
          <thead>
            <tr>
              <th scope="col">Name and lie</th>
              <th scope="col">
                To flag {flag?.record.label ?? ''}
                <br />
                {units.system === 'yards' ? 'yd' : 'm'}
              </th>
            </tr>
          </thead>
          <tbody>
            {balls.toSorted(byLabel).map(({ id, label, name }) => {
              const at = scene?.balls.find(({ record }) => record.id === id)?.at;
              const farM =
                at === undefined || flag === undefined
                  ? NaN
                  : Math.hypot(at.eastM - flag.at.eastM, at.northM - flag.at.northM);
              const placed = scene?.balls.find(({ record }) => record.id === id);
              return (
                <tr key={id} className={id === ballId ? 'chosen' : ''} onClick={() => choose(id, 'ball')}>
                  <td>
                    <button type="button" aria-pressed={id === ballId} onClick={() => choose(id, 'ball')}>
                      <span className="round">{label}</span>
                      <span>
                        <strong>{name === '' ? `Ball ${label}` : name}</strong>
                        <span className="under">
                          {scene === null || placed === undefined
                            ? ''
                            : lieText(placed, scene) + (groundReady ? stanceSlope(placed, scene) : '')}
                        </span>
                      </span>
                    </button>
                  </td>
                  <td>{distance(farM, units).text}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
        {controls !== null && <MapButtons controls={controls} />}
      </section>
      <section className="positions-plate" aria-label="Plate">
        {sceneTrouble !== null && <Trouble trouble={sceneTrouble} />}
        {placing !== null && (
          <div className="placing-note" role="status">
            {placing === 'ballPosition' ? 'Click where the ball lies.' : 'Click where the hole is cut.'}
            <button
              type="button"
              className="link-button"
              onClick={() => controls !== null && put(controls.middle())}
            >
              Put it in the middle
            </button>
            <button type="button" className="link-button" onClick={() => setPlacing(null)}>
              Cancel
            </button>
          </div>
        )}
        {scene !== null && (
          <PlateMap
            scene={scene}
            relief={relief}
            document={document}
            ballId={ballId}
            flagId={flagId}
            shots={noShots}
            moving={held !== null}
            units={units}
            largeType={largeType}
            editable={!readOnly}
            choose={choose}
            hold={(id, at) => hold({ id, at })}
            drop={(id, at) => {
              const place = document.records.get(id);
              if (place?.type === 'ballPosition' || place?.type === 'holeLocation')
                edit(movePlace(place, at));
              hold(null);
            }}
            place={placing === null ? undefined : put}
            onControls={setControls}
          />
        )}
      </section>
      <aside className="positions-side" aria-label="Details">
        {ball !== undefined && (
          <BallForm key={ball.id} ball={ball} scene={scene} readOnly={readOnly} edit={edit} />
        )}
        <div className="side-head">
          <h2>Hole locations</h2>
        </div>
        <table className="places">
          <tbody>
            {flags.toSorted(byLabel).map(({ id, label }) => {
              const placed = scene?.flags.find(({ record }) => record.id === id);
              const told = scene === null || placed === undefined ? null : flagWords(scene, placed, units);
              return (
                <tr key={id} className={id === flagId ? 'chosen' : ''} onClick={() => choose(id, 'flag')}>
                  <td>
                    <button type="button" aria-pressed={id === flagId} onClick={() => choose(id, 'flag')}>
                      <span className="square">{label}</span>
                      <span>
                        {told?.placeText ?? ''}
                        <span className="under">{groundReady ? (told?.slopeText ?? '') : ''}</span>
                      </span>
                    </button>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
        {!readOnly && (
          <button
            type="button"
            className="button"
            aria-pressed={placing === 'holeLocation'}
            onClick={() => setPlacing(placing === 'holeLocation' ? null : 'holeLocation')}
          >
            <Flag size={17} strokeWidth={1.9} aria-hidden /> Stand a flag
          </button>
        )}
        {day !== undefined && (
          <DayForm key={day.id} day={day} days={days} units={units} readOnly={readOnly} edit={edit} />
        )}
      </aside>
    </div>
  );
}

/** The same empty list every time, so that the map does not redraw for it. */
const noShots = [] as const;

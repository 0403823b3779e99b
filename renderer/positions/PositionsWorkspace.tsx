import { Flag, Plus } from 'lucide-react';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { findRecord, recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, putRecords } from '../../shared/atlas/edits.ts';
import type { AtlasDocument, BallPosition, HoleLocation } from '../../shared/atlas/records.ts';
import type { LonLat, PlanePoint } from '../../shared/geometry/points.ts';
import { likelyMisses } from '../../shared/planner/likelyMisses.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { parseSheetLine, placeFromSheet } from '../../shared/playbook/pinSheet.ts';
import { flagWords, lieText, playBearing, stanceSlope } from '../../shared/playbook/placeWords.ts';
import { USUAL_SEED } from '../../shared/protocol/planning.ts';
import { proposeFlags } from '../../shared/terrain/proposeFlags.ts';
import { slopeAt } from '../../shared/terrain/slope.ts';
import { distance } from '../../shared/units/format.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { MapButtons } from '../map/MapButtons.tsx';
import { type MapControls, PlateMap } from '../map/PlateMap.tsx';
import { byLabel } from '../store/byLabel.ts';
import { nextLetter, nextNumber } from '../store/labels.ts';
import { movePlace } from '../store/edits.ts';
import { tell } from '../store/notices.ts';
import { derivedStore } from '../store/planStore.ts';
import { sessionStore } from '../store/session.ts';
import { Trouble } from '../ui/Trouble.tsx';
import { holeWords } from '../ui/words.ts';
import { BallForm } from './BallForm.tsx';
import { DayForm } from './DayForm.tsx';
import { FlagTools } from './FlagTools.tsx';
import { LikelyMisses } from './LikelyMisses.tsx';
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
  const fromSheet = (typed: string): void => {
    if (scene === null) return;
    const { onPaces, sidePaces, side } = parseSheetLine(typed, 'Pin sheet');
    const at = placeFromSheet(
      scene.green.polygon,
      playBearing(scene),
      onPaces * units.paceM,
      sidePaces * units.paceM,
      side,
      'Pin sheet',
    );
    stand([at], (label) => `stood flag ${label} from the pin sheet`);
  };
  /** Stands flags with the next letters, in one step. */
  const stand = (places: readonly PlanePoint[], annotation: (labels: string) => string): void => {
    if (scene === null) return;
    const records: HoleLocation[] = [];
    for (const at of places) {
      const label = nextLetter([...flags, ...records]);
      const id = crypto.randomUUID();
      records.push({ type: 'holeLocation', id, holeId, label, name: '', at: scene.frame.toLonLat(at) });
    }
    const [first] = records;
    if (first === undefined) return;
    edit(putRecords(annotation(records.map(({ label }) => label).join(', ')), records));
    choose(first.id, 'flag');
  };
  const propose = (): void => {
    if (scene === null || !groundReady) return;
    const fair = proposeFlags(scene.ground, playBearing(scene), scene.conditions.stimpFt);
    if (fair.length === 0) {
      tell({
        message: 'No part of this green is flat and even enough for a hole at this green speed.',
        remedy: 'Stand the flag by hand, or change the day.',
      });
    } else
      stand(
        fair.map(({ at }) => at),
        (labels) => `stood the proposed flags ${labels}`,
      );
  };
  const [missesFromM, setMissesFrom] = useState<number | null>(null);
  const misses = useMemo(
    () =>
      scene === null || missesFromM === null
        ? null
        : likelyMisses(
            scene,
            { bearingDeg: playBearing(scene), distanceM: missesFromM },
            scene.player.level,
            {
              shots: 140,
              spots: 3,
              seed: USUAL_SEED,
            },
          ),
    [scene, missesFromM],
  );
  const pinMisses = (): void => {
    if (scene === null || misses === null) return;
    const records: BallPosition[] = [];
    for (const { at } of misses.spots) {
      records.push({
        type: 'ballPosition',
        id: crypto.randomUUID(),
        holeId,
        label: nextNumber([...balls, ...records]),
        name: 'likely miss',
        at: scene.frame.toLonLat(at),
        lie: 'clean',
        coverOverride: null,
      });
    }
    edit(
      putRecords(`pinned balls ${records.map(({ label }) => label).join(', ')} at likely misses`, records),
    );
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
        {scene !== null && (
          <LikelyMisses
            playerName={scene.player.name}
            distanceM={missesFromM ?? USUAL_APPROACH_M}
            found={misses}
            units={units}
            readOnly={readOnly}
            show={setMissesFrom}
            pin={pinMisses}
          />
        )}
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
            {...(misses === null ? {} : { likely: misses.offM })}
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
          <BallForm
            key={ball.id}
            ball={ball}
            scene={scene}
            stance={groundReady && scene !== null ? stanceWords(scene, ball.id, flagId) : ''}
            readOnly={readOnly}
            edit={edit}
          />
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
        {!readOnly && scene !== null && <FlagTools fromSheet={fromSheet} propose={propose} />}
        {day !== undefined && (
          <DayForm key={day.id} day={day} days={days} units={units} readOnly={readOnly} edit={edit} />
        )}
      </aside>
    </div>
  );
}

/** An approach most players have often, metres. */
const USUAL_APPROACH_M = 137;

/** "Stance 4 % up, 2 % across": the slope along the line to the flag and across it. */
function stanceWords(scene: Scene, ballId: string, flagId: string | null): string {
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  if (ball === undefined || flag === undefined) return '';
  const { slopePct, downhillBearingDeg } = slopeAt(scene.surface, ball.at);
  const line = Math.atan2(flag.at.eastM - ball.at.eastM, flag.at.northM - ball.at.northM);
  const turned = (downhillBearingDeg * Math.PI) / 180 - line;
  const up = -slopePct * Math.cos(turned);
  const across = slopePct * Math.sin(turned);
  const part = (value: number, words: string): string[] =>
    Math.abs(value) < 0.5 ? [] : [`${Math.round(Math.abs(value))} % ${words}`];
  // Falling to the right puts the ball below a right-hander's feet, and above a left-hander's.
  const below = across > 0 === (scene.player.handed === 'right');
  const parts = [
    ...part(up, up > 0 ? 'uphill' : 'downhill'),
    ...part(across, below ? 'with the ball below the feet' : 'with the ball above the feet'),
  ];
  return `Stance to flag ${flag.record.label}: ${parts.length === 0 ? 'level' : parts.join(', ')}`;
}

/** The same empty list every time, so that the map does not redraw for it. */
const noShots = [] as const;

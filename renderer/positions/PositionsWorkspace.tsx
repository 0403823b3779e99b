import { Flag, Plus } from 'lucide-react';
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { findRecord, inUseOf, recordsOf } from '../../shared/atlas/document.ts';
import { type Edit, putRecords } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { LonLat } from '../../shared/geometry/points.ts';
import { parseSheetLine, placeFromSheet } from '../../shared/playbook/pinSheet.ts';
import { playBearing } from '../../shared/playbook/placeWords.ts';
import { proposeFlags } from '../../shared/terrain/proposeFlags.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { MapButtons } from '../map/MapButtons.tsx';
import { type MapControls, PlateMap } from '../map/PlateMap.tsx';
import { groupNames } from '../store/ballGroups.ts';
import { movePlace } from '../store/edits.ts';
import { firstDay } from '../store/newAtlas.ts';
import { tell } from '../store/notices.ts';
import { useSettled } from '../store/useSettled.ts';
import { sessionStore } from '../store/session.ts';
import { GroupSelect } from '../ui/GroupSelect.tsx';
import { ToSurvey } from '../ui/ToSurvey.tsx';
import { Trouble } from '../ui/Trouble.tsx';
import { useBeat } from '../ui/useBeat.ts';
import { useSteady } from '../ui/useSteady.ts';
import { holeWords } from '../ui/words.ts';
import { BallForm } from './BallForm.tsx';
import { BallList } from './BallList.tsx';
import { DayForm } from './DayForm.tsx';
import { FlagForm } from './FlagForm.tsx';
import { FlagList } from './FlagList.tsx';
import { FlagTools } from './FlagTools.tsx';
import { LikelyMisses } from './LikelyMisses.tsx';
import { PlacingNote } from './PlacingNote.tsx';
import './positions.css';
import { stanceWords } from './stanceWords.ts';
import { useLikelyMisses } from './useLikelyMisses.ts';
import { usePlacing } from './usePlacing.ts';

interface PositionsWorkspaceProps {
  readonly document: AtlasDocument;
  readonly holeId: string;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
  readonly hold: (held: { readonly id: string; readonly at: LonLat } | null) => void;
}

/**
 * Where balls stop and flags stand: pinned, named and moved on the plate. While the hand moves one, the plate and the list of
 * balls follow with every frame, the forms beside them at a slower beat.
 */
export function PositionsWorkspace(props: PositionsWorkspaceProps): React.JSX.Element {
  const { document, holeId, units, largeType, readOnly, hold } = props;
  const { scene, relief, groundReady, sceneTrouble, ballId, flagId, held } = useSettled();
  const { ballGroup } = useStore(sessionStore);
  const [controls, setControls] = useState<MapControls | null>(null);
  // Without a green there is nothing to click on.
  const ready = !readOnly && scene !== null;
  const hole = findRecord(document, 'hole', holeId);
  const { balls, flags, days, day, groups, groupsHere, sheets } = useMemo(
    () => placesOf(document, holeId),
    [document, holeId],
  );
  const ball = balls.find(({ id }) => id === ballId);
  const flag = flags.find(({ id }) => id === flagId);
  const placedFlag = scene?.flags.find(({ record }) => record.id === flagId);
  const taken = useMemo(
    () => new Set(flags.flatMap(({ id, label }) => (id === flagId ? [] : [label]))),
    [flags, flagId],
  );
  const side = useBeat(scene, held !== null);
  const sideFlag = side?.flags.find(({ record }) => record.id === flagId);

  const edit = useSteady(props.edit);
  const choose = useSteady((id: string, kind: 'ball' | 'flag'): void => {
    const key = kind === 'ball' ? 'ballByHole' : 'flagByHole';
    sessionStore.setState({ [key]: { ...sessionStore.getState()[key], [holeId]: id } });
  });
  const chooseBall = useSteady((id: string) => choose(id, 'ball'));
  const chooseFlag = useSteady((id: string) => choose(id, 'flag'));
  const approach = useLikelyMisses(document, holeId, side, sideFlag?.at ?? null, groundReady);
  const { found } = approach;
  const { placing, setPlacing, put, stand, pin } = usePlacing({
    holeId,
    balls,
    flags,
    day,
    group: balls.some(({ group }) => group === ballGroup) ? ballGroup : null,
    edit,
    mark: approach.mark,
    choose,
  });
  const fromSheet = useSteady((typed: string): void => {
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
    // Once the first line has the name of its sheet, the lines after it belong to that too.
    stand([scene.frame.toLonLat(at)], (label) => `stood flag ${label} from the pin sheet`, flag?.sheet);
  });
  const propose = useSteady((): void => {
    if (scene === null || !groundReady) return;
    const fair = proposeFlags(scene.ground, playBearing(scene), scene.conditions.stimpFt);
    if (fair.length === 0) {
      tell({
        message: 'No part of this green is flat and even enough for a hole at this green speed.',
        remedy: 'Stand the flag by hand, or change the day.',
      });
    } else
      stand(
        fair.map(({ at }) => scene.frame.toLonLat(at)),
        (labels) => `stood the proposed flags ${labels}`,
      );
  });
  const pinMisses = useSteady((): void => {
    if (scene !== null && found !== null)
      pin(
        found.spots.map(({ at }) => scene.frame.toLonLat(at)),
        'likely miss',
        'likely misses',
      );
  });
  const setMarking = useSteady((marking: boolean) => setPlacing(marking ? 'approach' : null));

  return (
    <div className="positions">
      <h1 className="unseen">
        Positions of {hole === undefined ? 'the hole' : holeWords(hole.label, hole.name)}
      </h1>
      <section className="positions-balls" aria-label="Ball positions">
        {(scene !== null || balls.length > 0) && (
          <div className="side-head">
            <h2>Ball positions</h2>
            {ready && (
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
        )}
        <GroupSelect
          names={groupsHere}
          chosen={ballGroup}
          choose={(name) => sessionStore.setState({ ballGroup: name })}
        />
        {balls.length === 0 && ready && (
          <p className="stance">No ball yet: pin one where a shot may stop, or see the likely misses.</p>
        )}
        {balls.length > 0 && (
          <BallList
            balls={balls}
            ballId={ballId}
            flag={placedFlag}
            scene={scene}
            groundReady={groundReady}
            units={units}
            group={ballGroup}
            choose={chooseBall}
          />
        )}
        {scene !== null && (
          <LikelyMisses
            playerName={scene.player.name}
            approach={approach}
            flagLabel={placedFlag?.record.label ?? null}
            units={units}
            readOnly={readOnly}
            marking={placing === 'approach'}
            setMarking={setMarking}
            pin={pinMisses}
          />
        )}
        {controls !== null && <MapButtons controls={controls} />}
      </section>
      <section className="positions-plate" aria-label="Plate">
        {sceneTrouble !== null && (
          <>
            <Trouble trouble={sceneTrouble} />
            <ToSurvey go={() => sessionStore.setState({ workspace: 'survey' })} />
          </>
        )}
        {placing !== null && (
          <PlacingNote
            placing={placing}
            middle={() => controls !== null && put(controls.middle())}
            cancel={() => setPlacing(null)}
          />
        )}
        {scene !== null && (
          <PlateMap
            scene={scene}
            relief={relief}
            document={document}
            ballId={ballId}
            flagId={flagId}
            shots={noShots}
            {...(found === null ? {} : { likely: found.offM, approach: approach.line })}
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
            scene={side}
            stance={groundReady && side !== null ? stanceWords(side, ball.id, flagId) : ''}
            groups={groups}
            readOnly={readOnly}
            edit={edit}
          />
        )}
        {(scene !== null || flags.length > 0) && (
          <div className="side-head">
            <h2>Hole locations</h2>
            {ready && (
              <button
                type="button"
                className="button button-flag"
                aria-pressed={placing === 'holeLocation'}
                onClick={() => setPlacing(placing === 'holeLocation' ? null : 'holeLocation')}
              >
                <Flag size={17} strokeWidth={1.9} aria-hidden /> Stand a flag
              </button>
            )}
          </div>
        )}
        <FlagList
          flags={flags}
          flagId={flagId}
          scene={side}
          groundReady={groundReady}
          units={units}
          choose={chooseFlag}
        />
        {flag !== undefined && (
          <FlagForm
            key={flag.id}
            flag={flag}
            at={sideFlag?.at}
            scene={side}
            sheets={sheets}
            taken={taken}
            units={units}
            readOnly={readOnly}
            edit={edit}
          />
        )}
        {!readOnly && scene !== null && <FlagTools fromSheet={fromSheet} propose={propose} />}
        {day === undefined && !readOnly && (
          <button
            type="button"
            className="button"
            onClick={() => edit(putRecords('added a day', [firstDay]))}
          >
            <Plus size={17} strokeWidth={1.9} aria-hidden /> Describe the day
          </button>
        )}
        {day !== undefined && (
          <DayForm
            key={day.id}
            day={day}
            days={days}
            sheets={sheets}
            units={units}
            readOnly={readOnly}
            edit={edit}
          />
        )}
      </aside>
    </div>
  );
}

/** What of the document is shown of a hole. */
function placesOf(document: AtlasDocument, holeId: string) {
  const allBalls = recordsOf(document, 'ballPosition');
  const allFlags = recordsOf(document, 'holeLocation');
  const balls = allBalls.filter((one) => one.holeId === holeId);
  const days = recordsOf(document, 'conditions');
  return {
    balls,
    flags: allFlags.filter((one) => one.holeId === holeId),
    days,
    day: inUseOf(document, 'conditions'),
    groups: groupNames(allBalls),
    groupsHere: groupNames(balls),
    sheets: [...new Set([...allFlags, ...days].flatMap(({ sheet }) => sheet ?? []))].toSorted(),
  };
}

/** The same empty list every time, so that the map does not redraw for it. */
const noShots = [] as const;

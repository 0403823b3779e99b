import { FolderOpen, Map as MapIcon } from 'lucide-react';
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { LonLat } from '../../shared/geometry/points.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import type { DrawnShot } from '../../shared/plate/shotMark.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { type MapControls, PlateMap } from '../map/PlateMap.tsx';
import { byLabel } from '../store/byLabel.ts';
import { choiceFor, movePlace, putChoice, takeChoiceOut } from '../store/edits.ts';
import { derivedStore } from '../store/planStore.ts';
import { pairKey, sessionStore, type SortKey } from '../store/session.ts';
import { Trouble } from '../ui/Trouble.tsx';
import { AnswerPane } from './AnswerPane.tsx';
import type { Choice } from './Chooser.tsx';
import { ContextStrip } from './ContextStrip.tsx';
import './plan.css';
import { SectionView } from './SectionView.tsx';
import { aimLabel, landLabel } from './shotLabels.ts';
import { walkPlaces } from './walkPlaces.ts';

export interface PlanWorkspaceProps {
  readonly document: AtlasDocument;
  readonly holeId: string;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  readonly narrow: boolean;
  readonly readOnly: boolean;
  readonly edit: (edit: Edit) => void;
  readonly openFile: () => void;
  readonly openSample: () => void;
  readonly hold: (held: { readonly id: string; readonly at: LonLat } | null) => void;
}

/** Choose a ball and a flag; see what to do, where it goes, and why. */
export function PlanWorkspace(props: PlanWorkspaceProps): React.JSX.Element {
  const { document, holeId, units, largeType, narrow, readOnly, edit, hold } = props;
  const [controls, setControls] = useState<MapControls | null>(null);
  const derived = useStore(derivedStore);
  const session = useStore(sessionStore);
  const { scene, ballId, flagId, plan, stage } = derived;

  const balls = useMemo(() => placesOf(document, 'ballPosition', holeId), [document, holeId]);
  const flags = useMemo(() => placesOf(document, 'holeLocation', holeId), [document, holeId]);
  const ball = balls.find(({ id }) => id === ballId);
  const flag = flags.find(({ id }) => id === flagId);
  const ballRecord = ballId === null ? undefined : document.records.get(ballId);

  const pair = ballId !== null && flagId !== null ? pairKey(ballId, flagId) : null;
  const wanted = pair === null ? undefined : session.optionByPair[pair];
  const option =
    plan?.options.find(({ id }) => id === wanted) ?? plan?.options.find(({ id }) => id === plan.chosenId);
  const picked = ballId !== null && flagId !== null ? choiceFor(document, ballId, flagId) : null;

  const shots = useMemo(
    () =>
      scene === null || option === undefined
        ? []
        : drawnShots(scene, ballId, flagId, option, stage === 'coarse', units),
    [scene, ballId, flagId, option, stage, units],
  );

  const choosePlace = (kind: 'ball' | 'flag', id: string): void => {
    const key = kind === 'ball' ? 'ballByHole' : 'flagByHole';
    sessionStore.setState({ [key]: { ...sessionStore.getState()[key], [holeId]: id } });
  };
  const chooseOption = (id: string): void => {
    if (pair === null) return;
    sessionStore.setState({ optionByPair: { ...sessionStore.getState().optionByPair, [pair]: id } });
  };
  const sortBy = (key: SortKey): void => {
    sessionStore.setState(
      key !== session.sort
        ? { sort: key, descending: false }
        : session.descending
          ? { sort: 'order', descending: false }
          : { descending: key !== 'order' },
    );
  };
  const walk = (event: React.KeyboardEvent): void =>
    walkPlaces(event, balls, ballId, flags, flagId, choosePlace);
  const drop = (id: string, at: LonLat): void => {
    const place = document.records.get(id);
    if (place?.type === 'ballPosition' || place?.type === 'holeLocation') edit(movePlace(place, at));
    hold(null);
  };

  return (
    <>
      <ContextStrip
        document={document}
        balls={balls}
        flags={flags}
        ballId={ballId}
        flagId={flagId}
        units={units}
        chooseBall={(id) => choosePlace('ball', id)}
        chooseFlag={(id) => choosePlace('flag', id)}
        onKeyDown={walk}
      />
      <div className="plan">
        {scene !== null && (
          <div className="plan-left">
            <PlateMap
              scene={scene}
              relief={derived.relief}
              document={document}
              ballId={ballId}
              flagId={flagId}
              shots={shots}
              moving={derived.held !== null}
              units={units}
              largeType={largeType}
              editable={!readOnly}
              choose={(id, kind) => choosePlace(kind, id)}
              hold={(id, at) => hold({ id, at })}
              drop={drop}
              onControls={setControls}
            />
            <SectionView
              scene={scene}
              ballId={ballId}
              flagId={flagId}
              option={option ?? null}
              coarse={stage === 'coarse'}
              units={units}
              largeType={largeType}
              controls={controls}
            />
          </div>
        )}
        <div className={scene === null ? 'plan-alone' : 'plan-right'}>
          <div className="unseen" role="status" aria-live="polite">
            {stage === 'firm' && option !== undefined
              ? `${optionName(option)}, ${ball?.name ?? ''} to ${flag?.name ?? ''}`
              : ''}
          </div>
          {derived.sceneTrouble !== null && (
            <div className="answer-empty">
              <h1 className="answer-name">Not ready to plan</h1>
              <Trouble trouble={derived.sceneTrouble} />
              <div className="actions">
                <button type="button" className="button" onClick={props.openFile}>
                  <FolderOpen size={18} strokeWidth={1.9} aria-hidden /> Open a file
                </button>
                <button type="button" className="button" onClick={props.openSample}>
                  <MapIcon size={18} strokeWidth={1.9} aria-hidden /> Open the sample course
                </button>
              </div>
            </div>
          )}
          {derived.planTrouble !== null && <Trouble trouble={derived.planTrouble} />}
          {scene !== null && balls.length === 0 && (
            <div className="answer-empty">
              <h1 className="answer-name">No ball yet</h1>
              <p>Pin a ball position beside this green, and the plan for it appears here.</p>
            </div>
          )}
          {plan !== null && option !== undefined && ball !== undefined && flag !== undefined && (
            <AnswerPane
              plan={plan}
              option={option}
              ballName={ball.name}
              ballLie={ballRecord?.type === 'ballPosition' ? ballRecord.lie : 'clean'}
              flagLabel={flag.label}
              units={units}
              stage={stage}
              stale={derived.stale}
              pickedId={picked?.optionId ?? null}
              readOnly={readOnly}
              sort={session.sort}
              descending={session.descending}
              narrow={narrow}
              large={largeType}
              choose={chooseOption}
              sortBy={sortBy}
              pick={(id) => edit(putChoice(picked, plan.ballId, plan.flagId, id))}
              unpick={() => picked !== null && edit(takeChoiceOut(picked))}
            />
          )}
        </div>
      </div>
    </>
  );
}

const kindWords = { ballPosition: 'Ball', holeLocation: 'Flag' } as const;

function placesOf(document: AtlasDocument, type: keyof typeof kindWords, holeId: string): readonly Choice[] {
  const places: Choice[] = [];
  for (const record of document.records.values()) {
    if (record.type !== type || record.holeId !== holeId) continue;
    const name = record.name === '' ? '' : `, ${record.name}`;
    places.push({ id: record.id, label: record.label, name: `${kindWords[type]} ${record.label}${name}` });
  }
  return places.toSorted(byLabel);
}

function drawnShots(
  scene: Scene,
  ballId: string | null,
  flagId: string | null,
  option: PlanOption,
  coarse: boolean,
  units: UnitsPreference,
): readonly DrawnShot[] {
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  if (ball === undefined || flag === undefined) return [];
  return [
    {
      option,
      ball: ball.at,
      flag: flag.at,
      role: 'proposed',
      coarse,
      aimText: aimLabel(option, units),
      landText: landLabel(option, units),
    },
  ];
}

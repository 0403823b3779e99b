import { FolderOpen, Map as MapIcon } from 'lucide-react';
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { recordsOf } from '../../shared/atlas/document.ts';
import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { LonLat } from '../../shared/geometry/points.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import type { DrawnShot } from '../../shared/plate/shotMark.ts';
import type { SurroundsLayer } from '../../shared/plate/surroundsLayer.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { PlaybookFont } from '../../shared/playbook/playbookCss.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { type MapControls, PlateMap } from '../map/PlateMap.tsx';
import { byLabel } from '../store/byLabel.ts';
import { choiceFor, movePlace, noteChoice, putChoice, takeChoiceOut } from '../store/edits.ts';
import { tell, troubleOf } from '../store/notices.ts';
import type { Planning } from '../store/planning.ts';
import { derivedStore } from '../store/planStore.ts';
import { pairKey, sessionStore, type SortKey } from '../store/session.ts';
import { Trouble } from '../ui/Trouble.tsx';
import { AnswerPane } from './AnswerPane.tsx';
import type { Choice } from './Chooser.tsx';
import { CompareTable } from './CompareTable.tsx';
import { ContextStrip } from './ContextStrip.tsx';
import './plan.css';
import { savePicture } from './savePicture.ts';
import { SectionView } from './SectionView.tsx';
import { aimLabel, landLabel } from './shotLabels.ts';
import { SurroundsBar, type SurroundsChoice, SurroundsSelect } from './SurroundsBar.tsx';
import { TryPanel } from './TryPanel.tsx';
import { tryFrom, tryRequest, type TrySettings } from './trySettings.ts';
import { useSurrounds } from './useSurrounds.ts';
import { useTry } from './useTry.ts';
import { WhatChanges } from './WhatChanges.tsx';
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
  readonly open: (workspace: 'positions' | 'player') => void;
  readonly planning: Pick<Planning, 'tryShot' | 'surrounds'>;
  /** The letters of pictures, to be carried inside them. */
  readonly fonts: () => Promise<readonly PlaybookFont[]>;
}

/** Choose a ball and a flag; see what to do, where it goes, and why. */
export function PlanWorkspace(props: PlanWorkspaceProps): React.JSX.Element {
  const { document, holeId, units, largeType, narrow, readOnly, edit, hold, planning } = props;
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

  // What is set beside the option, and what is tried, hold for this ball and this flag alone.
  const [besideFor, setBeside] = useState<{ readonly pair: string; readonly ids: readonly string[] } | null>(
    null,
  );
  const besideIds = besideFor?.pair === pair && stage === 'firm' ? besideFor.ids : null;
  const beside = useMemo(
    () =>
      (besideIds ?? []).flatMap((id) =>
        id === option?.id ? [] : (plan?.options.find((one) => one.id === id) ?? []),
      ),
    [besideIds, plan, option],
  );
  const [tryFor, setTry] = useState<{ readonly pair: string; readonly settings: TrySettings } | null>(null);
  const settings = tryFor?.pair === pair && plan !== null ? tryFor.settings : null;
  const request = useMemo(
    () =>
      settings === null || ballId === null || flagId === null || plan === null
        ? null
        : tryRequest(settings, document, { ballId, flagId }, plan.chosenId),
    [settings, document, ballId, flagId, plan],
  );
  const { tried, trouble: tryTrouble } = useTry(planning, request, scene);
  const shownOption = settings === null ? option : (tried?.tried ?? option);
  const triedAdvice = tried?.advised ?? null;
  const others = useMemo(
    () => (settings === null ? beside : triedAdvice === null ? [] : [triedAdvice]),
    [settings, triedAdvice, beside],
  );

  const [ground, setGround] = useState<SurroundsChoice>('off');
  const flagRecord = scene?.flags.find(({ record }) => record.id === flagId);
  const placedBall = scene?.balls.find(({ record }) => record.id === ballId);
  const surroundsKey =
    scene === null ? '' : JSON.stringify([scene.groundKey, scene.conditions, scene.player, flagRecord]);
  const surrounds = useSurrounds(
    planning,
    flagId,
    surroundsKey,
    ground !== 'off' && derived.held === null && stage === 'firm',
  );
  const layer = useMemo<SurroundsLayer | null>(
    () => (ground === 'off' || surrounds.map === null ? null : { map: surrounds.map, by: ground }),
    [ground, surrounds.map],
  );

  const shots = useMemo(
    () =>
      scene === null || shownOption === undefined
        ? []
        : drawnShots(scene, ballId, flagId, shownOption, others, stage === 'coarse', units),
    [scene, ballId, flagId, shownOption, others, stage, units],
  );
  const player = recordsOf(document, 'player').find(({ inUse }) => inUse) ?? recordsOf(document, 'player')[0];
  const save = (what: 'plate' | 'section', kind: 'svg' | 'png', drawing: SvgNode): void => {
    const name = ['hole', scene?.hole.label, 'ball', ball?.label, 'flag', flag?.label, what].join('-');
    void props
      .fonts()
      .then((letters) => savePicture(drawing, kind, name.toLowerCase(), letters))
      .catch((error: unknown) => tell(troubleOf(error)));
  };
  const toggleTry = (): void => {
    setBeside(null);
    setTry(
      settings !== null || pair === null || option === undefined ? null : { pair, settings: tryFrom(option) },
    );
  };
  const toggleCompare = (): void => {
    setTry(null);
    if (besideIds !== null || pair === null || plan === null || option === undefined) setBeside(null);
    else {
      const rival = plan.options.find(({ id }) => id === plan.chosenId && id !== option.id);
      const next = rival ?? plan.options.find(({ id, playAway }) => id !== option.id && !playAway);
      setBeside({ pair, ids: next === undefined ? [] : [next.id] });
    }
  };

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
        readOnly={readOnly}
        edit={edit}
        open={props.open}
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
              layer={layer}
              landing={settings === null ? null : (settings.landing ?? tried?.tried.landing ?? null)}
              moveLanding={(at) =>
                setTry((now) =>
                  now === null ? null : { ...now, settings: { ...now.settings, landing: at } },
                )
              }
              moving={derived.held !== null}
              units={units}
              largeType={largeType}
              editable={!readOnly}
              choose={(id, kind) => choosePlace(kind, id)}
              hold={(id, at) => hold({ id, at })}
              drop={drop}
              onControls={setControls}
            />
            <SurroundsBar
              choice={ground}
              layer={layer}
              share={surrounds.share}
              flagLabel={flag?.label ?? ''}
              choose={setGround}
            />
            {surrounds.trouble !== null && <Trouble trouble={surrounds.trouble} />}
            <SectionView
              scene={scene}
              ballId={ballId}
              flagId={flagId}
              option={derived.groundReady ? (shownOption ?? null) : null}
              others={others}
              save={save}
              choice={<SurroundsSelect choice={ground} choose={setGround} />}
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
              option={shownOption ?? option}
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
              note={picked?.note ?? ''}
              setNote={(note) => picked !== null && edit(noteChoice(picked, note))}
              handed={player?.handed ?? 'right'}
              flag={flagRecord?.at ?? { eastM: 0, northM: 0 }}
              trying={settings !== null}
              comparing={besideIds !== null}
              toggleTry={toggleTry}
              toggleCompare={toggleCompare}
              changes={
                stage === 'firm' && scene !== null && option.id === plan.chosenId ? (
                  <WhatChanges
                    found={derived.switchPoints}
                    share={derived.switchShare}
                    chosenName={optionName(option)}
                    stimpFt={scene.conditions.stimpFt}
                    firmness={scene.conditions.firmness}
                    units={units}
                  />
                ) : null
              }
              instead={
                settings !== null &&
                player !== undefined &&
                placedBall !== undefined &&
                flagRecord !== undefined ? (
                  <TryPanel
                    document={document}
                    player={player}
                    plan={plan}
                    ball={placedBall.at}
                    flag={flagRecord.at}
                    settings={settings}
                    tried={tried}
                    trouble={tryTrouble}
                    units={units}
                    change={(change) =>
                      setTry((now) =>
                        now === null ? null : { ...now, settings: { ...now.settings, ...change } },
                      )
                    }
                    reset={() =>
                      setTry((now) => (now === null ? null : { ...now, settings: tryFrom(option) }))
                    }
                    close={() => setTry(null)}
                  />
                ) : besideIds !== null ? (
                  <CompareTable
                    options={[option, ...beside]}
                    more={plan.options.filter(({ id }) => id !== option.id && !besideIds.includes(id))}
                    units={units}
                    add={(id) => pair !== null && setBeside({ pair, ids: [...besideIds, id] })}
                    drop={(id) =>
                      pair !== null && setBeside({ pair, ids: besideIds.filter((one) => one !== id) })
                    }
                    close={() => setBeside(null)}
                  />
                ) : null
              }
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
  others: readonly PlanOption[],
  coarse: boolean,
  units: UnitsPreference,
): readonly DrawnShot[] {
  const ball = scene.balls.find(({ record }) => record.id === ballId);
  const flag = scene.flags.find(({ record }) => record.id === flagId);
  if (ball === undefined || flag === undefined) return [];
  const place = { ball: ball.at, flag: flag.at, coarse };
  return [
    ...others.map((other) => ({
      ...place,
      option: other,
      role: 'second' as const,
      aimText: '',
      landText: '',
    })),
    {
      ...place,
      option,
      role: 'proposed',
      aimText: aimLabel(option, units),
      landText: landLabel(option, units),
    },
  ];
}

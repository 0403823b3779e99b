import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { inUseOf, recordsOf } from '../../shared/atlas/document.ts';
import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { LonLat, PlanePoint } from '../../shared/geometry/points.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import { type PlanOption } from '../../shared/planner/plan.ts';
import type { PlaybookFont } from '../../shared/playbook/playbookCss.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { movePlace } from '../store/edits.ts';
import type { Planning } from '../store/planning.ts';
import { useSettled } from '../store/useSettled.ts';
import { pairKey, sessionStore, type SortKey } from '../store/session.ts';
import { focusInstead } from '../ui/giveFocusBack.ts';
import { useSteady } from '../ui/useSteady.ts';
import { AnswerPane } from './AnswerPane.tsx';
import { CompareTable } from './CompareTable.tsx';
import { ContextStrip } from './ContextStrip.tsx';
import { holdsFor } from './holdsFor.ts';
import { ballChoices, flagChoices } from './places.ts';
import { NotReady } from './NotReady.tsx';
import './plan.css';
import { PlanPicture } from './PlanPicture.tsx';
import { PlayersTable } from './PlayersTable.tsx';
import { SurveyDoubt } from './SurveyDoubt.tsx';
import { TryPanel } from './TryPanel.tsx';
import { tryRequest } from './trySettings.ts';
import { Unplanned } from './Unplanned.tsx';
import { usePanel } from './usePanel.ts';
import { usePick } from './usePick.ts';
import { usePlayersBeside } from './usePlayersBeside.ts';
import { useReadFromHead } from './useReadFromHead.ts';
import { useSavePicture } from './useSavePicture.ts';
import { useTry } from './useTry.ts';
import { WhatChanges } from './WhatChanges.tsx';
import { useWalking } from './useWalking.ts';
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
  readonly open: (workspace: 'survey' | 'positions' | 'player') => void;
  readonly planning: Pick<Planning, 'tryShot' | 'surrounds' | 'players' | 'surveyDoubt' | 'planAgain'>;
  /** The letters of pictures, to be carried inside them. */
  readonly fonts: () => Promise<readonly PlaybookFont[]>;
}

const nobody: readonly PlanOption[] = [];
const chooseGroup = (ballGroup: string | null): void => sessionStore.setState({ ballGroup });
const nowhere: PlanePoint = { eastM: 0, northM: 0 };

/**
 * Choose a ball and a flag; see what to do, where it goes, and why. While the hand moves one it is made again with every
 * frame, so its parts are kept as long as what they show is the same.
 */
export function PlanWorkspace(props: PlanWorkspaceProps): React.JSX.Element {
  const { document, holeId, units, largeType, narrow, readOnly, edit, hold, planning } = props;
  const derived = useSettled();
  const session = useStore(sessionStore);
  const { scene, ballId, flagId, plan, stage } = derived;

  const balls = useMemo(
    () => ballChoices(document, holeId, session.ballGroup),
    [document, holeId, session.ballGroup],
  );
  const flags = useMemo(() => flagChoices(document, holeId), [document, holeId]);
  const ball = balls.find(({ id }) => id === ballId);
  const flag = flags.find(({ id }) => id === flagId);
  const ballRecord = ballId === null ? undefined : document.records.get(ballId);
  const placedBall = scene?.balls.find(({ record }) => record.id === ballId);
  const placedFlag = scene?.flags.find(({ record }) => record.id === flagId);
  const player = inUseOf(document, 'player');

  const pair = ballId !== null && flagId !== null ? pairKey(ballId, flagId) : null;
  // What one player looked at is not what another is advised.
  const looked = pair === null ? null : `${pair} ${player?.id ?? ''}`;
  const wanted = looked === null ? undefined : session.optionByPair[looked];
  const option =
    plan?.options.find(({ id }) => id === wanted) ?? plan?.options.find(({ id }) => id === plan.chosenId);
  const { picked, pick, unpick, setNote } = usePick(document, player, ballId, flagId, edit);

  const panel = usePanel(looked, plan, option, stage === 'firm');
  const { besideIds, settings } = panel;
  const beside = useMemo(
    () =>
      (besideIds ?? []).flatMap((id) =>
        id === option?.id ? [] : (plan?.options.find((one) => one.id === id) ?? []),
      ),
    [besideIds, plan, option],
  );
  const request = useMemo(
    () =>
      settings === null || ballId === null || flagId === null || plan === null
        ? null
        : tryRequest(settings, document, { ballId, flagId }, plan.chosenId),
    [settings, document, ballId, flagId, plan],
  );
  const { tried, trouble: tryTrouble } = useTry(planning, request, looked ?? '', scene?.key ?? null);

  const { choices, keys, setKeys, advice, share, trouble } = usePlayersBeside(
    planning,
    useMemo(() => recordsOf(document, 'player'), [document]),
    player,
    panel.players && stage === 'firm' && derived.held === null ? { ballId, flagId } : null,
    scene?.key ?? null,
  );

  const [shownOption, others] = useMemo<readonly [PlanOption | null, readonly PlanOption[]]>(() => {
    if (settings !== null) return [tried?.tried ?? option ?? null, tried?.advised ? [tried.advised] : nobody];
    if (panel.players && advice !== null) {
      const inOrder = keys.flatMap((key) => advice.find(({ playerId }) => playerId === key)?.option ?? []);
      return [inOrder[0] ?? option ?? null, inOrder.slice(1)];
    }
    return [option ?? null, beside];
  }, [settings, tried, option, panel.players, advice, keys, beside]);

  // What a panel shows, and the answer it was opened from, are read from their head.
  const right = useReadFromHead(panel.kind);
  const first = choices.find(({ key }) => key === keys[0]);
  const planned = plan !== null && option !== undefined && player !== undefined;
  const holds = useMemo(
    () => holdsFor({ plan, stage, switchPoints: derived.switchPoints }),
    [plan, stage, derived.switchPoints],
  );
  const { walking, step } = useWalking();
  const planAgain = useSteady(() => {
    planning.planAgain();
    focusInstead('.strip [role=radio][aria-checked=true]');
  });

  const { fonts } = props;
  const save = useSavePicture({ document, scene, ball, flag, option: shownOption, units, largeType, fonts });
  const choosePlace = useSteady((kind: 'ball' | 'flag', id: string): void => {
    const key = kind === 'ball' ? 'ballByHole' : 'flagByHole';
    sessionStore.setState({ [key]: { ...sessionStore.getState()[key], [holeId]: id } });
    if (id === ballId || id === flagId) planning.planAgain();
  });
  const chooseBall = useSteady((id: string) => choosePlace('ball', id));
  const chooseFlag = useSteady((id: string) => choosePlace('flag', id));
  const chooseOption = useSteady((id: string): void => {
    if (looked === null) return;
    sessionStore.setState({ optionByPair: { ...sessionStore.getState().optionByPair, [looked]: id } });
  });
  const sortBy = useSteady((key: SortKey): void => {
    sessionStore.setState(
      key !== session.sort
        ? { sort: key, descending: false }
        : session.descending
          ? { sort: 'order', descending: false }
          : { descending: key !== 'order' },
    );
  });
  useEffect(() => {
    // With nothing else in hand the arrow keys walk balls and flags from anywhere.
    const walkFromAnywhere = (event: KeyboardEvent): void => {
      if (event.target === window.document.body)
        walkPlaces(event, balls, ballId, flags, flagId, choosePlace, step);
    };
    window.addEventListener('keydown', walkFromAnywhere);
    return () => window.removeEventListener('keydown', walkFromAnywhere);
  });
  const walk = useSteady((event: React.KeyboardEvent) =>
    walkPlaces(event.nativeEvent, balls, ballId, flags, flagId, choosePlace, step, event.currentTarget),
  );
  const editSteadily = useSteady(edit);
  const open = useSteady(props.open);
  const drop = (id: string, at: LonLat): void => {
    const place = document.records.get(id);
    if (place?.type === 'ballPosition' || place?.type === 'holeLocation') edit(movePlace(place, at));
    hold(null);
  };

  const instead = useMemo((): React.ReactNode => {
    if (plan === null || option === undefined) return null;
    if (settings !== null)
      return player === undefined || placedBall === undefined || placedFlag === undefined ? null : (
        <TryPanel
          document={document}
          player={player}
          plan={plan}
          ball={placedBall}
          flag={placedFlag.at}
          settings={settings}
          tried={tried}
          trouble={tryTrouble}
          units={units}
          change={panel.changeTry}
          reset={panel.resetTry}
          close={panel.close}
        />
      );
    if (besideIds !== null)
      return (
        <CompareTable
          options={[option, ...beside]}
          more={plan.options.filter(({ id }) => id !== option.id && !besideIds.includes(id))}
          units={units}
          add={(id) => panel.setBeside([...besideIds, id])}
          drop={(id) => panel.setBeside(besideIds.filter((one) => one !== id))}
          close={panel.close}
        />
      );
    return panel.players ? (
      <PlayersTable
        keys={keys}
        choices={choices}
        advice={advice}
        share={share}
        trouble={trouble}
        units={units}
        setKeys={setKeys}
        close={panel.close}
      />
    ) : null;
  }, [
    plan,
    option,
    panel,
    settings,
    besideIds,
    beside,
    document,
    player,
    placedBall,
    placedFlag,
    tried,
    tryTrouble,
    keys,
    choices,
    advice,
    share,
    trouble,
    setKeys,
    units,
  ]);
  const conditions = scene?.conditions ?? null;
  const changes = useMemo(
    (): React.ReactNode =>
      plan !== null && option !== undefined ? (
        <>
          {stage === 'firm' && conditions !== null && option.id === plan.chosenId ? (
            <WhatChanges
              found={derived.switchPoints}
              plan={plan}
              conditions={conditions}
              flags={flags}
              units={units}
              chooseFlag={chooseFlag}
              beside={(id) => panel.setBeside([id])}
            />
          ) : null}
          <SurveyDoubt
            planning={planning}
            document={document}
            plan={plan}
            option={option}
            units={units}
            walking={walking}
          />
        </>
      ) : null,
    [
      plan,
      option,
      stage,
      conditions,
      derived.switchPoints,
      flags,
      units,
      chooseFlag,
      panel,
      planning,
      document,
      walking,
    ],
  );

  return (
    <>
      <ContextStrip
        document={document}
        holeId={holeId}
        balls={balls}
        flags={flags}
        ballId={ballId}
        flagId={flagId}
        units={units}
        group={session.ballGroup}
        chooseBall={chooseBall}
        chooseFlag={chooseFlag}
        chooseGroup={chooseGroup}
        onKeyDown={walk}
        readOnly={readOnly}
        edit={editSteadily}
        open={open}
      />
      <div className="plan">
        {scene !== null && (
          <PlanPicture
            document={document}
            derived={{ ...derived, scene }}
            planning={planning}
            walking={walking}
            option={shownOption}
            others={others}
            landing={settings === null ? null : (settings.landing ?? tried?.tried.landing ?? null)}
            moveLanding={(landing) => panel.changeTry({ landing })}
            units={units}
            largeType={largeType}
            readOnly={readOnly}
            choose={(id, kind) => choosePlace(kind, id)}
            hold={hold}
            drop={drop}
            save={save}
          />
        )}
        <div className={scene === null ? 'plan-alone' : 'plan-right'} ref={right}>
          <div className="unseen" role="status" aria-live="polite">
            {stage === 'firm' && option !== undefined
              ? `${optionName(option)}, ${ball?.name ?? ''} to ${flag?.name ?? ''}`
              : ''}
          </div>
          {derived.sceneTrouble !== null && (
            <NotReady
              trouble={derived.sceneTrouble}
              toSurvey={() => props.open('survey')}
              openFile={props.openFile}
              openSample={props.openSample}
            />
          )}
          {scene !== null && (
            <Unplanned
              derived={derived}
              balls={balls}
              flags={flags}
              ball={ball}
              flag={flag}
              planAgain={planAgain}
              toPositions={() => props.open('positions')}
            />
          )}
          {planned && ball !== undefined && flag !== undefined && (
            <AnswerPane
              plan={plan}
              option={shownOption ?? option}
              ballName={ball.name}
              ballLie={ballRecord?.type === 'ballPosition' ? ballRecord.lie : 'clean'}
              flagLabel={flag.label}
              player={player}
              bag={(panel.players && advice !== null ? first?.player : player)?.bag ?? []}
              holds={holds}
              units={units}
              stage={stage}
              stale={derived.stale}
              stopped={derived.stopped}
              planAgain={planAgain}
              pickedId={picked?.optionId ?? null}
              readOnly={readOnly}
              sort={session.sort}
              descending={session.descending}
              narrow={narrow}
              large={largeType}
              choose={chooseOption}
              sortBy={sortBy}
              pick={pick}
              note={picked?.note ?? ''}
              setNote={setNote}
              unpick={unpick}
              handed={player.handed}
              flag={stage === 'firm' && placedFlag !== undefined ? placedFlag.at : nowhere}
              moving={derived.held !== null || walking}
              panel={panel}
              changes={changes}
              instead={instead}
            />
          )}
        </div>
      </div>
    </>
  );
}

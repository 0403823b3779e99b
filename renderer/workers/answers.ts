import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { sceneFor } from '../../shared/planner/answer.ts';
import { fingerprint } from '../../shared/planner/fingerprint.ts';
import { flagToolsSteps, within } from '../../shared/planner/flagTools.ts';
import { type HeldPlace, movedScene } from '../../shared/planner/movedScene.ts';
import type { Plan } from '../../shared/planner/plan.ts';
import { planSteps } from '../../shared/planner/planBall.ts';
import { playersAdviceSteps } from '../../shared/planner/playersAdvice.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { type SurroundsMap, surroundsMapSteps } from '../../shared/planner/surroundsMap.ts';
import { surroundsOver } from '../../shared/planner/surroundsOver.ts';
import { type SureLines, sureLinesSteps } from '../../shared/planner/sureLine.ts';
import { surveyDoubtSteps } from '../../shared/planner/surveyDoubt.ts';
import { switchPointsSteps } from '../../shared/planner/switchPoints.ts';
import { tryShotSteps } from '../../shared/planner/tryShot.ts';
import { groundRelief } from '../../shared/plate/groundRelief.ts';
import { playbookHtmlSteps } from '../../shared/playbook/playbookHtml.ts';
import { playbookModel } from '../../shared/playbook/playbookModel.ts';
import { linesAsked } from '../../shared/playbook/surveyLines.ts';
import type { GroundFit, PlanningCall, PlanningCalls, ReliefData } from '../../shared/protocol/planning.ts';
import type { Sent } from './planningChannel.ts';

/** How a call is answered: in steps, each with the share that is done; some have a first answer before the firm one. */
type Answers = {
  readonly [K in PlanningCall]: (
    document: AtlasDocument,
    question: Sent<K>,
    early?: (answer: PlanningCalls[K][1]) => void,
  ) => Generator<number, PlanningCalls[K][1]>;
};

/* eslint-disable require-yield -- an answer in one step is a generator as well, so that all are run alike */

export const answers: Answers = {
  plan: (document, question, early) => planSteps(sceneNow(document, question), question, early),
  switchPoints: (document, question) =>
    switchPointsSteps(sceneFor({ document, holeId: question.holeId }), question),
  *surrounds(document, { holeId, flagIds }) {
    const scene = sceneFor({ document, holeId });
    const maps: SurroundsMap[] = [];
    for (const flagId of flagIds) {
      const steps = surroundsMapSteps(scene, flagId);
      let step = steps.next();
      while (step.done !== true) {
        yield (maps.length + step.value) / flagIds.length;
        step = steps.next();
      }
      maps.push(step.value);
    }
    return surroundsOver(maps);
  },
  surveyDoubt: (document, question) =>
    surveyDoubtSteps(sceneFor({ document, holeId: question.holeId }), question),
  tryShot: (document, question) => tryShotSteps(sceneNow(document, question), question.request),
  players: (document, { holeId, request }) => playersAdviceSteps(sceneFor({ document, holeId }), request),
  *ground(document, { holeId }) {
    return groundFit(sceneFor({ document, holeId }));
  },
  *relief(document, { holeId, units, arrowSpacingM, heavyOnly }) {
    return reliefData(document, sceneFor({ document, holeId }), { units, arrowSpacingM, heavyOnly });
  },
  *pages(document, { holeId, plans, ballIds, holds, units, layout }) {
    const scene = sceneFor({ document, holeId });
    const balls = scene.balls.filter(({ record }) => ballIds?.includes(record.id) !== false);
    const shown = { ...scene, balls };
    const sure = layout.parts === 'cards' ? [] : yield* within(0, SURE_SHARE, sureOf(document, shown, plans));
    const model = playbookModel(document, [shown], plans, {
      units,
      sure,
      ...(holds === undefined ? {} : { holds }),
    });
    return yield* within(SURE_SHARE, 1, playbookHtmlSteps(model, layout));
  },
  *warm(document, { holeId, flagIds }) {
    const scene = sceneFor({ document, holeId });
    let made = 0;
    for (const id of flagIds) {
      const flag = scene.flags.find(({ record }) => record.id === id);
      if (flag === undefined) continue;
      for (const share of flagToolsSteps(scene, flag.at)) yield (made + share) / flagIds.length;
      made += 1;
    }
    return made;
  },
};

/** Share of the work on the pages of a hole that goes into how sure their lines are. */
const SURE_SHARE = 0.7;
/** Pages are laid out anew for another sheet or unit, which changes nothing of this. */
const sureKept = new Map<string, readonly SureLines[]>();
const MOST_SURE_KEPT = 40;

function* sureOf(
  document: AtlasDocument,
  scene: Scene,
  plans: readonly Plan[],
): Generator<number, readonly SureLines[]> {
  const asked = linesAsked(document, scene, plans);
  const options = asked.map(({ lines }) =>
    lines.map(({ ballId, option }) => [ballId, option.id, option.landing]),
  );
  const key = fingerprint([scene.key, options]);
  const known = sureKept.get(key);
  if (known !== undefined) return known;
  const told = yield* sureLinesSteps(scene, asked);
  if (sureKept.size >= MOST_SURE_KEPT) sureKept.clear();
  sureKept.set(key, told);
  return told;
}

/** The scene with what the hand holds where it is. */
function sceneNow(
  document: AtlasDocument,
  { holeId, held }: { readonly holeId: string; readonly held?: HeldPlace },
): Scene {
  const scene = sceneFor({ document, holeId });
  return held === undefined ? scene : movedScene(scene, held);
}

function groundFit({ groundKey, surfaceKey, surface }: Scene): GroundFit {
  const { originEastM, originNorthM, cellM, columns, rows, nodes } = surface;
  return { groundKey, surfaceKey, shape: { originEastM, originNorthM, cellM, columns, rows }, nodes };
}

function reliefData(
  document: AtlasDocument,
  scene: Scene,
  options: Parameters<typeof groundRelief>[3],
): ReliefData {
  const { input, surface } = scene;
  const greens = input.areas.filter(({ kind }) => kind === 'green').map(({ polygon }) => polygon);
  const lines = input.breaklines.map(({ id, points }) => {
    const record = document.records.get(id);
    const ridge = record?.type === 'line' && record.kind === 'ridge';
    return { kind: ridge ? ('ridge' as const) : ('tierEdge' as const), points };
  });
  const relief = groundRelief(surface, greens, lines, options);
  return {
    greens: relief.greens,
    slopeClasses: relief.slopeClasses,
    contours: relief.contours,
    arrows: relief.arrows,
    lines: relief.lines,
  };
}

import { byLabel } from '../atlas/byLabel.ts';
import { creditLines } from '../atlas/credits.ts';
import type { AtlasDocument, RecordOf } from '../atlas/records.ts';
import { pointAlong } from '../geometry/bearing.ts';
import { groundRelief } from '../plate/groundRelief.ts';
import type { ReliefDrawing } from '../plate/relief.ts';
import { optionName, shortOptionName } from '../planner/optionName.ts';
import type { Plan, PlanOption } from '../planner/plan.ts';
import { reasonText } from '../planner/reasonText.ts';
import type { Scene, SceneBall, SceneFlag } from '../planner/scene.ts';
import type { SureLines } from '../planner/sureLine.ts';
import { amongCarries } from '../player/swingWords.ts';
import * as format from '../units/format.ts';
import { percentFromDegrees } from '../units/slope.ts';
import type { UnitsPreference } from '../units/preference.ts';
import { cautions } from './cautions.ts';
import { dayText } from './dayText.ts';
import type { PlaybookFlag, PlaybookHole, PlaybookModel, PlaybookRow } from './model.ts';
import { holdsOf, type KnownHold } from './holdsOf.ts';
import { choiceOf, measureText, printedOption, sureText } from './surveyLines.ts';
import { riskText } from './riskText.ts';
import { flagWords, lieText, playBearing, stanceSlope } from './placeWords.ts';

export interface PlaybookOptions {
  readonly units: UnitsPreference;
  /** How sure the printed lines are by the survey, where that has been worked out. */
  readonly sure?: readonly SureLines[];
  /** How far choices hold, for the balls and flags of which that has been worked out. */
  readonly holds?: readonly KnownHold[];
}

/**
 * Lays the words and figures of a playbook out from the document, a scene for each hole it shall hold, and the plans made
 * for their balls and flags. What the player chose takes the place of the advice, and the difference is told. A ball
 * without a plan for a flag is named as missing, never guessed.
 */
export function playbookModel(
  document: AtlasDocument,
  scenes: readonly Scene[],
  plans: readonly Plan[],
  options: PlaybookOptions,
): PlaybookModel {
  const header = document.records.get('atlas');
  const first = scenes[0];
  return {
    title: header?.type === 'atlas' ? header.name : '',
    placed: header?.type === 'atlas' && header.placed,
    playerName: first?.player.name ?? '',
    dayText: first === undefined ? '' : dayText(document, first.conditions, options.units),
    units: options.units,
    cautions,
    credits: creditLines(document),
    holes: [...scenes]
      .sort((a, b) => a.hole.order - b.hole.order)
      .map((scene) => holeModel(document, byLabels(scene), plans, options)),
  };
}

/** Balls by their numbers and flags by their letters, as a reader looks for them: a scene has them by record. */
const byLabels = (scene: Scene): Scene => ({
  ...scene,
  balls: scene.balls.toSorted((a, b) => byLabel(a.record, b.record)),
  flags: scene.flags.toSorted((a, b) => byLabel(a.record, b.record)),
});

function holeModel(
  document: AtlasDocument,
  scene: Scene,
  plans: readonly Plan[],
  { units, sure = [], holds = [] }: PlaybookOptions,
): PlaybookHole {
  const { hole } = scene;
  const greens = scene.input.areas.filter((area) => area.kind === 'green').map((area) => area.polygon);
  const playBearingDeg = playBearing(scene);
  const size = greenSize(scene, playBearingDeg);
  const par = hole.par === null ? '' : `, par ${String(hole.par)}`;
  const station = document.records.get('atlas');
  const kind = station?.type === 'atlas' && station.kind === 'practiceGround' ? 'Station' : 'Hole';
  return {
    id: hole.id,
    label: hole.label,
    name: hole.name,
    subtitle: `${kind} ${hole.label}${par}, green ${format.size(size.widthM, size.lengthM, units)}`,
    playBearingDeg,
    areas: scene.input.areas,
    relief: groundRelief(scene.surface, greens, shapeLines(document, scene), {
      units,
      arrowSpacingM: 2.6,
      heavyOnly: false,
    }),
    greenPoints: scene.green.polygon[0] ?? [],
    balls: scene.balls.map((ball) => ({
      mark: { id: ball.record.id, label: ball.record.label, at: ball.at, chosen: false },
      name: ball.record.name,
      lieText: lieText(ball, scene) + stanceSlope(ball, scene),
    })),
    flags: scene.flags.map((flag) => {
      const told = sure.find(({ flagId }) => flagId === flag.record.id);
      return flagModel(document, scene, flag, plans, told, holds, units);
    }),
  };
}

function greenSize(scene: Scene, playBearingDeg: number): { widthM: number; lengthM: number } {
  const a = (playBearingDeg * Math.PI) / 180;
  const ring = scene.green.polygon[0] ?? [];
  const along = ring.map((p) => p.eastM * Math.sin(a) + p.northM * Math.cos(a));
  const across = ring.map((p) => p.eastM * Math.cos(a) - p.northM * Math.sin(a));
  return {
    lengthM: Math.max(...along) - Math.min(...along),
    widthM: Math.max(...across) - Math.min(...across),
  };
}

function shapeLines(document: AtlasDocument, scene: Scene): ReliefDrawing['lines'] {
  return scene.input.breaklines.map((line) => {
    const record = document.records.get(line.id);
    const ridge = record?.type === 'line' && record.kind === 'ridge';
    return { kind: ridge ? 'ridge' : 'tierEdge', points: line.points };
  });
}

/** "5.2 % uphill" along the line of play; empty where it would not be felt. */
function stanceText(lieAlongDeg: number): string {
  const percent = percentFromDegrees(lieAlongDeg);
  if (Math.abs(percent) < 1) return '';
  return `, ${format.withUnit(format.slope(Math.abs(percent)))} ${percent > 0 ? 'uphill' : 'downhill'}`;
}

function flagModel(
  document: AtlasDocument,
  scene: Scene,
  flag: SceneFlag,
  plans: readonly Plan[],
  told: SureLines | undefined,
  known: readonly KnownHold[],
  units: UnitsPreference,
): PlaybookFlag {
  const rows: PlaybookRow[] = [];
  const missing: string[] = [];
  for (const ball of scene.balls) {
    const plan = plans.find((p) => p.ballId === ball.record.id && p.flagId === flag.record.id);
    const printed = plan === undefined ? undefined : printedOption(document, scene.player.id, plan);
    const row =
      plan === undefined
        ? null
        : rowModel(document, ball, scene, plan, holdsOf(plan, scene, plans, known), units);
    const open =
      printed === undefined ? null : sureText(told, ball.record.id, printed, ball.at, flag.at, units);
    if (row === null) missing.push(ball.record.label);
    else rows.push({ ...row, open });
  }
  return {
    mark: { id: flag.record.id, label: flag.record.label, at: flag.at, chosen: true },
    name: flag.record.name,
    ...flagWords(scene, flag, units),
    rows,
    measure: rows.some(({ open }) => open !== null) ? measureText(scene, told, units) : null,
    missing,
  };
}

function rowModel(
  document: AtlasDocument,
  ball: SceneBall,
  scene: Scene,
  plan: Plan,
  holds: string | null,
  units: UnitsPreference,
): Omit<PlaybookRow, 'open'> | null {
  const advised = plan.options.find((option) => option.id === plan.chosenId);
  if (advised === undefined) return null;
  const choice = choiceOf(document, scene.player.id, plan);
  const chosen =
    choice === undefined ? undefined : plan.options.find((option) => option.id === choice.optionId);
  const option = chosen ?? advised;
  const safe = plan.options.find((other) => other.id === plan.safeId);
  const rolled = option.landing === null;
  const choiceDiffers = differenceText(choice, chosen, advised);
  return {
    ballLabel: ball.record.label,
    ballName: ball.record.name,
    lieText: lieText(ball, scene) + stanceText(plan.lieAlongDeg),
    shot: optionName(option),
    shotShort: shortOptionName(option),
    swing: option.size,
    amongCarries: amongCarries(option, scene.player.bag, units),
    carry: rolled ? '–' : format.distance(option.carryM, units).text,
    land: rolled ? '–' : option.landingOnM === null ? 'off' : format.landing(option.landingOnM, units).text,
    aim: format.aim(option.aimRightM, units).text,
    run: format.distance(option.runM, units).text,
    leave: format.leave(option.leave.medianM, units).text,
    upAndDown: format.chance(option.chances.upAndDown).text,
    trouble: format.chance(option.chances.trouble).text,
    why: option.reasons
      // What the player's own choice costs is told with it.
      .filter(({ kind }) => choiceDiffers === null || kind !== 'costsStrokes')
      .map((reason) => sentence(reasonText(reason, units))),
    risk: riskText(option),
    safe: safe === undefined || safe.id === option.id ? null : safeText(safe, units),
    holds: option.id === advised.id ? holds : null,
    choiceDiffers,
    note: choice?.note ?? '',
    link: {
      ball: ball.at,
      landing: option.landing ?? pointAlong(ball.at, option.aimBearingDeg, Math.max(plan.distanceM, 0.1)),
      rolled,
    },
  };
}

const sentence = (text: string): string => {
  const trimmed = text.trim();
  return trimmed === '' || /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
};

function safeText(option: PlanOption, units: UnitsPreference): string {
  const parts = [optionName(option)];
  if (option.landing !== null && option.landingOnM !== null) {
    const { text } = format.landing(option.landingOnM, units);
    parts.push(text === 'edge' ? 'land on the edge' : `land ${text}`);
  }
  const aim = format.aim(option.aimRightM, units);
  parts.push(aim.text === 'at it' ? 'aim at it' : `aim ${aim.text.replace(/ ([LR])$/, ` ${aim.unit} $1`)}`);
  parts.push(`leaves ${format.withUnit(format.leave(option.leave.medianM, units))}`);
  parts.push(`trouble ${format.withUnit(format.chance(option.chances.trouble))}`);
  return parts.join(', ');
}

function differenceText(
  choice: RecordOf<'choice'> | undefined,
  chosen: PlanOption | undefined,
  advised: PlanOption,
): string | null {
  if (choice === undefined) return null;
  if (chosen === undefined)
    return `Your choice is no longer among the options, so the advice is shown: ${optionName(advised)}.`;
  if (chosen.id === advised.id) return null;
  const cost = chosen.strokes - advised.strokes;
  const size = format.strokes(Math.abs(cost));
  const difference =
    Math.abs(cost) < 0.005 ? 'level with yours' : `${size} strokes ${cost > 0 ? 'better' : 'worse'}`;
  return `Your choice. The advice was ${optionName(advised)}, ${difference}.`;
}

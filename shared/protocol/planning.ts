import type { AtlasDocument } from '../atlas/records.ts';
import type { HeldPlace } from '../planner/movedScene.ts';
import type { Plan } from '../planner/plan.ts';
import type { PlanRequest } from '../planner/planBall.ts';
import type { PlayerAdvice, PlayersRequest } from '../planner/playersAdvice.ts';
import type { SurroundsMap } from '../planner/surroundsMap.ts';
import type { SurveyDoubt } from '../planner/surveyDoubt.ts';
import type { SwitchPoints } from '../planner/switchPoints.ts';
import type { TriedShot, TryRequest } from '../planner/tryShot.ts';
import type { ReliefDrawing } from '../plate/relief.ts';
import type { KnownHold } from '../playbook/holdsOf.ts';
import type { PlaybookLayout } from '../playbook/playbookHtml.ts';
import type { GridShape } from '../terrain/hermiteGrid.ts';
import type { UnitsPreference } from '../units/preference.ts';

/** A hole of a document: what every question to the workers is about. */
export interface HoleQuestion {
  readonly document: AtlasDocument;
  readonly holeId: string;
}

/** One question to the planner: plain data, so that it can cross to a worker and be hashed. */
export interface PlanQuestion extends HoleQuestion, PlanRequest {
  /** A ball or flag that is elsewhere than the document has it: the hand holds it. */
  readonly held?: HeldPlace;
}

/** The fitted ground as plain data. */
export interface GroundFit {
  /** Scene.groundKey and surfaceKey of the scene it was made for. */
  readonly groundKey: string;
  readonly surfaceKey: string;
  readonly shape: GridShape;
  /** GridSurface.nodes: the surface made of them again is the same to the last bit. */
  readonly nodes: Float64Array;
}

export interface ReliefQuestion extends HoleQuestion {
  readonly units: UnitsPreference;
  readonly arrowSpacingM: number;
  readonly heavyOnly: boolean;
}

/** The drawing of a fitted ground, without the slope it can be asked for at any place. */
export type ReliefData = Omit<ReliefDrawing, 'downhillAt'>;

export interface SurroundsQuestion extends HoleQuestion {
  /** One flag, or several to be put together. */
  readonly flagIds: readonly string[];
}

export interface TryQuestion extends HoleQuestion {
  readonly request: TryRequest;
  readonly held?: HeldPlace;
}

export interface PlayersQuestion extends HoleQuestion {
  readonly request: PlayersRequest;
}

export interface PagesQuestion extends HoleQuestion {
  readonly plans: readonly Plan[];
  /** The balls on the pages, by id; left out for all of them. */
  readonly ballIds?: readonly string[];
  /** How far choices hold, of those that have been looked at. */
  readonly holds?: readonly KnownHold[];
  readonly units: UnitsPreference;
  readonly layout: PlaybookLayout;
}

export interface WarmQuestion extends HoleQuestion {
  readonly flagIds: readonly string[];
}

/** Calls of the planning worker, as name -> [input, output]. */
export interface PlanningCalls {
  plan: [PlanQuestion, Plan];
  ground: [HoleQuestion, GroundFit];
  relief: [ReliefQuestion, ReliefData];
  switchPoints: [PlanQuestion, SwitchPoints];
  surveyDoubt: [PlanQuestion, SurveyDoubt];
  surrounds: [SurroundsQuestion, SurroundsMap];
  tryShot: [TryQuestion, TriedShot];
  /** What several players are advised from the same ball, in their order. */
  players: [PlayersQuestion, readonly PlayerAdvice[]];
  /** The pages of a playbook as one HTML file. */
  pages: [PagesQuestion, string];
  /** Makes ready what every plan to these flags needs; the answer is how many are. */
  warm: [WarmQuestion, number];
}
export type PlanningCall = keyof PlanningCalls;

/**
 * Shots for each option of a firm plan that is in contention: differences of such options scatter by a hundredth of a
 * stroke. A power of two, since such a sample is balanced.
 */
export const USUAL_SHOTS = 512;
/** Any number would do; always the same one, so that the window and the command line give the same plan. */
export const USUAL_SEED = 1;

import type { PlanePoint } from '../geometry/points.ts';
import { boundingBox, pointInPolygon } from '../geometry/ring.ts';
import { generator } from '../random/generator.ts';
import { fitSurface } from '../terrain/fitSurface.ts';
import { type MeasureHere, measureNext } from '../terrain/measureNext.ts';
import { surfaceEnsemble } from '../terrain/surfaceEnsemble.ts';
import { surveyedGround } from '../terrain/surveyedGround.ts';
import type { Plan, PlanOption } from './plan.ts';
import { type PlanRequest, planSteps } from './planBall.ts';
import { type Scene, sceneOn } from './scene.ts';

/** How one option fares on the surfaces that the survey allows. */
export interface OptionDoubt {
  readonly id: string;
  /** Mean strokes and their standard deviation over the surfaces on which the option was in the running. */
  readonly strokes: number;
  readonly spreadStrokes: number;
  /** Share of all surfaces on which it was in the running, and on which it was the choice. */
  readonly inRunning: number;
  readonly chosen: number;
}

/** What the survey leaves open of one plan. */
export interface SurveyDoubt {
  readonly surfaces: number;
  /** The choice on the fitted ground, and the share of the surfaces on which it is the choice too. */
  readonly chosenId: string;
  readonly holds: number;
  /** Most often chosen first. */
  readonly options: readonly OptionDoubt[];
  /** Where one more height would help this shot most; null where the ground was only assumed. */
  readonly measureHere: MeasureHere | null;
}

export const SURVEY_SURFACES = 8;
const LATTICE_M = 1.5;
const MOST_PLACES = 150;
/** A place matters as much as shots land or finish within this of it, metres. */
const NEAR_M = 2.5;

/**
 * Plans one ball to one flag anew on surfaces that agree with the evidence as well as the fitted one does, all with the same
 * shots, so that what differs is the ground alone. Coarse plans: they follow the fitted ground's own coarse plan, not its
 * full one. Yields the share that is done; whoever stops asking has cancelled. The same scene, request and count give the
 * same answer to the last bit. Throws as `planSteps` does.
 */
export function* surveyDoubtSteps(
  scene: Scene,
  request: PlanRequest,
  surfaces: number = SURVEY_SURFACES,
): Generator<number, SurveyDoubt> {
  const coarse: PlanRequest = { ...request, effort: 'coarse' };
  const fitted = fitSurface(scene.input, { flatWithoutEvidence: true });
  const members = surfaceEnsemble(fitted, surfaces, generator(request.seed));
  const whole = members.length + 1;
  const reference = yield* planned(scene, coarse, 0, whole);
  const plans: Plan[] = [];
  for (const surface of members) {
    const on = sceneOn(scene, { input: scene.input, surface, ground: surveyedGround(surface, scene.input) });
    plans.push(yield* planned(on, coarse, plans.length + 1, whole));
  }
  const chosen = reference.options.find(({ id }) => id === reference.chosenId);
  const places = latticeOver(scene);
  const [measureHere] = measureNext(fitted, places, {
    count: 1,
    ...(chosen !== undefined && { weight: visits(chosen) }),
  });
  return {
    surfaces: plans.length,
    chosenId: reference.chosenId,
    holds: plans.filter((plan) => plan.chosenId === reference.chosenId).length / plans.length,
    options: optionDoubts(plans),
    measureHere: measureHere ?? null,
  };
}

function* planned(scene: Scene, request: PlanRequest, done: number, whole: number): Generator<number, Plan> {
  const steps = planSteps(scene, request);
  let step = steps.next();
  while (step.done !== true) {
    yield (done + step.value) / whole;
    step = steps.next();
  }
  return step.value;
}

function optionDoubts(plans: readonly Plan[]): OptionDoubt[] {
  const strokes = new Map<string, number[]>();
  for (const { options } of plans)
    for (const option of options) strokes.set(option.id, [...(strokes.get(option.id) ?? []), option.strokes]);
  return [...strokes]
    .map(([id, values]): OptionDoubt => {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      const squares = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
      return {
        id,
        strokes: mean,
        spreadStrokes: values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : 0,
        inRunning: values.length / plans.length,
        chosen: plans.filter((plan) => plan.chosenId === id).length / plans.length,
      };
    })
    .sort((a, b) => b.chosen - a.chosen || a.strokes - b.strokes || (a.id < b.id ? -1 : 1));
}

/** Share of the shots that land or finish near a place. */
function visits({ landingsM, finishesM }: PlanOption): (at: PlanePoint) => number {
  const spots = [...landingsM, ...finishesM];
  return ({ eastM, northM }) => {
    let near = 0;
    for (let i = 0; i < spots.length; i += 2) {
      const dx = (spots[i] ?? Infinity) - eastM;
      const dy = (spots[i + 1] ?? Infinity) - northM;
      if (dx * dx + dy * dy < NEAR_M * NEAR_M) near += 1;
    }
    return (2 * near) / Math.max(1, spots.length);
  };
}

/** Places spread evenly over the green, further apart where they would be too many. */
function latticeOver({ green: { polygon } }: Scene): readonly PlanePoint[] {
  const box = boundingBox(polygon[0] ?? []);
  if (box === null) return [];
  const area = (box.eastM - box.westM) * (box.northM - box.southM);
  const spacing = Math.max(LATTICE_M, Math.sqrt(area / MOST_PLACES));
  const places: PlanePoint[] = [];
  for (let northM = box.southM + spacing / 2; northM < box.northM; northM += spacing)
    for (let eastM = box.westM + spacing / 2; eastM < box.eastM; eastM += spacing)
      if (pointInPolygon({ eastM, northM }, polygon)) places.push({ eastM, northM });
  return places;
}

import type { AtlasDocument } from '../atlas/records.ts';
import type { GridSurface } from '../terrain/hermiteGrid.ts';
import type { Plan } from './plan.ts';
import { type PlanRequest, type Progress, planSteps } from './planBall.ts';
import { buildScene, type Scene } from './scene.ts';

/** What to plan, and the document and hole to plan it from. */
export interface Question extends PlanRequest {
  readonly document: AtlasDocument;
  readonly holeId: string;
}

/** Scenes kept between questions, each with the document it was made from, newest last. */
const kept: { readonly document: AtlasDocument; readonly scene: Scene }[] = [];
const MOST_KEPT = 8;

/** Fits made elsewhere, by what they are fits of, newest last. */
const fits = new Map<string, GridSurface>();

/** Spares `sceneFor` the fit of ground that has been fitted elsewhere. */
export function keepFit(surfaceKey: string, surface: GridSurface): void {
  fits.delete(surfaceKey);
  fits.set(surfaceKey, surface);
  const [oldest] = fits.keys();
  if (fits.size > MOST_KEPT && oldest !== undefined) fits.delete(oldest);
}

/**
 * The scene of a question, taken from the last few when nothing it depends on has changed; the fitted ground is
 * taken over when only balls, flags, player or conditions have.
 */
export function sceneFor(question: Pick<Question, 'document' | 'holeId'>): Scene {
  const { document, holeId } = question;
  const known = kept.findIndex(({ scene }) => scene.hole.id === holeId);
  const before = known < 0 ? undefined : kept.splice(known, 1)[0];
  const scene = before?.document === document ? before.scene : sceneAgain(document, holeId, before?.scene);
  kept.push({ document, scene });
  if (kept.length > MOST_KEPT) kept.shift();
  return scene;
}

function sceneAgain(document: AtlasDocument, holeId: string, before: Scene | undefined): Scene {
  const scene = buildScene(document, holeId, before, (surfaceKey) => fits.get(surfaceKey));
  return before?.key === scene.key ? before : scene;
}

/** One question answered. Throws InputProblem as buildScene and planBall do. */
export function answer(question: Question, onProgress?: Progress): Plan {
  const steps = answerSteps(question);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    onProgress?.(step.value);
  }
}

/** The same in steps, so that a worker can look for a newer question between two of them. */
export function* answerSteps(question: Question): Generator<number, Plan> {
  const scene = sceneFor(question);
  yield 0.02;
  return yield* planSteps(scene, question);
}

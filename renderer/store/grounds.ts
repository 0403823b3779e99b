import {
  prepareScene,
  type PreparedScene,
  type Scene,
  type SceneGround,
  sceneOn,
} from '../../shared/planner/scene.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { GroundFit } from '../../shared/protocol/planning.ts';
import { hermiteGrid } from '../../shared/terrain/hermiteGrid.ts';
import { surveyedGround } from '../../shared/terrain/surveyedGround.ts';

const MOST_KEPT = 8;

/** Scenes for the window, on ground that a worker has fitted. */
export class Grounds {
  readonly #kept = new Map<string, SceneGround>();

  /**
   * The scene of a hole at once: on its own ground where that has come, else on the ground shown before on this hole, else
   * on level ground. Throws InputProblem as `buildScene` does.
   */
  sceneNow(
    document: AtlasDocument,
    holeId: string,
    before: Scene | null,
  ): { readonly scene: Scene; readonly ready: boolean } {
    const prepared = prepareScene(document, holeId);
    const fitted = this.#kept.get(prepared.groundKey);
    if (fitted !== undefined) return { scene: sceneOn(prepared, fitted), ready: true };
    const surface = before?.hole.id === holeId ? before.surface : levelUnder(prepared);
    const { input } = prepared;
    return {
      scene: sceneOn(prepared, { input, surface, ground: surveyedGround(surface, input) }),
      ready: false,
    };
  }

  /** Keeps a fit for the scene that asked for it; another one's is of no use by now. */
  keep(fit: GroundFit, { groundKey, input }: Pick<Scene, 'groundKey' | 'input'>): void {
    if (fit.groundKey !== groundKey) return;
    const surface = hermiteGrid(fit.shape, fit.heightsM, fit.riseEast, fit.riseNorth);
    this.#kept.set(groundKey, { input, surface, ground: surveyedGround(surface, input) });
    const [oldest] = this.#kept.keys();
    if (this.#kept.size > MOST_KEPT && oldest !== undefined) this.#kept.delete(oldest);
  }
}

function levelUnder({ input }: PreparedScene): SceneGround['surface'] {
  const { westM, southM, eastM, northM } = input.extent;
  const cellM = Math.max(eastM - westM, northM - southM);
  const shape = { originEastM: westM, originNorthM: southM, cellM, columns: 2, rows: 2 };
  const zero = (): Float64Array => new Float64Array(4);
  return hermiteGrid(shape, zero(), zero(), zero());
}

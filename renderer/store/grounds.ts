import {
  prepareScene,
  type PreparedScene,
  type Scene,
  type SceneGround,
  sceneOn,
} from '../../shared/planner/scene.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { GroundFit } from '../../shared/protocol/planning.ts';
import { type GridSurface, hermiteGrid, hermiteGridOf } from '../../shared/terrain/hermiteGrid.ts';
import { surveyedGround } from '../../shared/terrain/surveyedGround.ts';

const MOST_KEPT = 8;

interface Fitted {
  readonly surfaceKey: string;
  readonly made: SceneGround;
}

/** Scenes for the window, on ground that a worker has fitted. */
export class Grounds {
  readonly #kept = new Map<string, Fitted>();

  /** The ground of a key (`Scene.groundKey`), where its fit has come. */
  of(groundKey: string): SceneGround | undefined {
    return this.#kept.get(groundKey)?.made;
  }

  newestFirst(): readonly (readonly [groundKey: string, ground: SceneGround])[] {
    return [...this.#kept].reverse().map(([key, { made }]) => [key, made]);
  }

  /**
   * The scene of a hole at once: on its own ground where its fit has come, if only for other cover over the same heights;
   * else on the ground shown before on this hole, else on level ground. Throws InputProblem as `buildScene` does.
   */
  sceneNow(
    document: AtlasDocument,
    holeId: string,
    before: Scene | null,
  ): { readonly scene: Scene; readonly ready: boolean } {
    const prepared = prepareScene(document, holeId);
    const { groundKey, input } = prepared;
    const fitted = this.of(groundKey) ?? this.#underOtherCover(prepared);
    if (fitted !== undefined) return { scene: sceneOn(prepared, fitted), ready: true };
    const surface = before?.hole.id === holeId ? before.surface : levelUnder(prepared);
    return {
      scene: sceneOn(prepared, { input, surface, ground: surveyedGround(surface, input) }),
      ready: false,
    };
  }

  /** Keeps a fit for the scene that asked for it; another one's is of no use by now. */
  keep(fit: GroundFit, scene: Pick<Scene, 'groundKey' | 'surfaceKey' | 'input'>): void {
    if (fit.groundKey !== scene.groundKey) return;
    this.#make(scene, hermiteGridOf(fit.shape, fit.nodes));
  }

  #underOtherCover(prepared: PreparedScene): SceneGround | undefined {
    const same = [...this.#kept.values()].find(({ surfaceKey }) => surfaceKey === prepared.surfaceKey);
    return same === undefined ? undefined : this.#make(prepared, same.made.surface);
  }

  #make(
    { groundKey, surfaceKey, input }: Pick<Scene, 'groundKey' | 'surfaceKey' | 'input'>,
    surface: GridSurface,
  ): SceneGround {
    const made = { input, surface, ground: surveyedGround(surface, input) };
    this.#kept.set(groundKey, { surfaceKey, made });
    const [oldest] = this.#kept.keys();
    if (this.#kept.size > MOST_KEPT && oldest !== undefined) this.#kept.delete(oldest);
    return made;
  }
}

function levelUnder({ input }: PreparedScene): SceneGround['surface'] {
  const { westM, southM, eastM, northM } = input.extent;
  const cellM = Math.max(eastM - westM, northM - southM);
  const shape = { originEastM: westM, originNorthM: southM, cellM, columns: 2, rows: 2 };
  const zero = (): Float64Array => new Float64Array(4);
  return hermiteGrid(shape, zero(), zero(), zero());
}

import { groundChange } from '../../shared/terrain/groundChange.ts';
import { meet } from '../../shared/terrain/groundReads.ts';
import type { SceneGround } from '../../shared/planner/scene.ts';
import type { Grounds } from './grounds.ts';

/**
 * Answers by the ground they were worked out on and whatever else they depend on. One from another ground is given as well
 * where the two differ in nothing that it looked at: it is what a fresh one would be.
 */
export class KeptOnGround<T extends { readonly readGround?: Uint8Array }> {
  readonly #made = new Map<string, T>();
  readonly #changes = new WeakMap<SceneGround, WeakMap<SceneGround, Uint8Array | null>>();
  readonly #grounds: Grounds;
  readonly #most: number;

  constructor(grounds: Grounds, most: number) {
    this.#grounds = grounds;
    this.#most = most;
  }

  /** @param rest names what the answer depends on besides the ground */
  get(groundKey: string, rest: string): T | undefined {
    const known = this.#made.get(`${groundKey} ${rest}`);
    const here = this.#grounds.of(groundKey);
    if (known !== undefined || here === undefined) return known;
    for (const [otherKey, there] of this.#grounds.newestFirst()) {
      const other = this.#made.get(`${otherKey} ${rest}`);
      if (other?.readGround === undefined) continue;
      const change = this.#change(there, here);
      if (change === null || meet(change, other.readGround)) continue;
      this.keep(groundKey, rest, other);
      return other;
    }
    return undefined;
  }

  keep(groundKey: string, rest: string, made: T): void {
    this.#made.set(`${groundKey} ${rest}`, made);
    const [oldest] = this.#made.keys();
    if (this.#made.size > this.#most && oldest !== undefined) this.#made.delete(oldest);
  }

  #change(before: SceneGround, after: SceneGround): Uint8Array | null {
    const changes = this.#changes.get(before) ?? new WeakMap<SceneGround, Uint8Array | null>();
    this.#changes.set(before, changes);
    const known = changes.get(after);
    if (known !== undefined) return known;
    const change = groundChange(before, after);
    changes.set(after, change);
    return change;
  }
}

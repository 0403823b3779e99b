/**
 * The last thing made for each key, for as long as all it was made of stays the same: after an edit nearly everything on a
 * plate is drawn as before. Records and what is made of them are immutable, so being the same object tells it.
 */
export class LastMade<K extends object, V> {
  readonly #kept = new WeakMap<K, { readonly of: readonly unknown[]; readonly made: V }>();

  get(key: K, of: readonly unknown[], make: () => V): V {
    const before = this.#kept.get(key);
    if (before !== undefined && isSame(before.of, of)) return before.made;
    const made = make();
    this.#kept.set(key, { of, made });
    return made;
  }
}

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return false;
  return true;
}

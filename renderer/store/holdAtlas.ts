/** How long a window that is being closed or reloaded may take to let go, ms. */
const PATIENCE_MS = 1000;

let letGo: () => void = () => undefined;

/**
 * Holds an atlas of the library for this window alone, letting go of the one held before. False where another window has
 * it: two windows writing one journal would tangle their steps. Where the browser has no locks it is always held.
 */
export function holdAtlas(id: string): Promise<boolean> {
  letGo();
  if (typeof navigator === 'undefined' || !('locks' in navigator)) return Promise.resolve(true);
  return new Promise((resolve) => {
    navigator.locks
      .request(`swale-atlas-${id}`, { signal: AbortSignal.timeout(PATIENCE_MS) }, () => {
        resolve(true);
        return new Promise<void>((done) => {
          letGo = done;
        });
      })
      .catch(() => resolve(false));
  });
}

/** Why an atlas that another window holds cannot be changed. */
export const ELSEWHERE =
  'This atlas is open in another window, so it can only be read here. Close it there and open it here again, or use Save as to work on a copy.';

/** How long a window that is being closed or reloaded may take to let go, ms. */
const PATIENCE_MS = 1000;

let letGo: () => void = () => undefined;
let wanted = '';

/** Lets go of the atlas held, so that another window may change it. */
export function letAtlasGo(): void {
  wanted = '';
  letGo();
  letGo = () => undefined;
}

/**
 * Holds an atlas of the library for this window alone, letting go of the one held before. False where another window has
 * it: two windows writing one journal would tangle their steps. Where the browser has no locks it is always held. A new
 * atlas is nobody else's, so that it is waited for however busy this window is.
 */
export function holdAtlas(id: string, isNew = false): Promise<boolean> {
  letAtlasGo();
  if (typeof navigator === 'undefined' || !('locks' in navigator)) return Promise.resolve(true);
  wanted = id;
  return new Promise((resolve) => {
    navigator.locks
      .request(`swale-atlas-${id}`, isNew ? {} : { signal: AbortSignal.timeout(PATIENCE_MS) }, () => {
        // Another atlas may have been asked for while this one was waited for.
        if (wanted !== id) {
          resolve(false);
          return undefined;
        }
        resolve(true);
        return new Promise<void>((done) => {
          letGo = done;
        });
      })
      .catch(() => resolve(false));
  });
}

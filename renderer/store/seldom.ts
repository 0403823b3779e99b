/** Does a thing at once, and asked again soon after, once more when the time is over: however often, no more than that. */
export function seldom(run: () => void, everyMs: number): () => void {
  let waiting = false;
  let again = false;
  const ask = (): void => {
    if (waiting) {
      again = true;
      return;
    }
    waiting = true;
    again = false;
    run();
    setTimeout(() => {
      waiting = false;
      if (again) ask();
    }, everyMs);
  };
  return ask;
}

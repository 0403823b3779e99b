/** Where looks at a ground are noted (`GroundReads`). */
interface Notes {
  into: Uint8Array;
}

/** Runs a job whose looks at the ground go into bytes of their own, whatever else is done between two of its steps. */
export function* noted<T>(reads: Notes, into: Uint8Array, steps: Generator<number, T>): Generator<number, T> {
  for (;;) {
    const step = notedNow(reads, into, () => steps.next());
    if (step.done === true) return step.value;
    yield step.value;
  }
}

/** The same for a job in one step. */
export function notedNow<T>(reads: Notes, into: Uint8Array, job: () => T): T {
  const before = reads.into;
  reads.into = into;
  try {
    return job();
  } finally {
    reads.into = before;
  }
}

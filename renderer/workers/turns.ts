/** How much somebody waits for a computation: `asked` is waited for, `ahead` will be wanted next, `idle` can wait for both. */
export type Rank = 'asked' | 'ahead' | 'idle';

/** Whoever computes: told to hold at its next pause, and to go on. */
export interface Worked {
  hold(): void;
  goOn(): void;
}

const order: readonly Rank[] = ['asked', 'ahead', 'idle'];
/** Work that nobody waits for goes on only when nothing of a higher rank has run for this long, ms. */
const QUIET_MS = 250;

/**
 * Lets what is asked for have the processor to itself: while something of a higher rank runs, the rest holds. What nobody
 * waits for begins a moment late, so that walking quickly through balls or dragging one starts none of it.
 */
export class Turns {
  readonly #running = new Map<Worked, Rank>();
  readonly #held = new Set<Worked>();
  /** What may run: this rank and those above it. */
  #open: Rank = 'asked';
  #timer: ReturnType<typeof setTimeout> | undefined;

  begin(worked: Worked, rank: Rank): void {
    this.#running.set(worked, rank);
    if (order.indexOf(rank) < order.indexOf(this.#open)) this.#open = rank;
    this.#tell();
    this.#later();
  }

  end(worked: Worked): void {
    if (!this.#running.delete(worked)) return;
    if (this.#held.delete(worked)) worked.goOn();
    this.#later();
  }

  /** Opens to the next rank once it has been quiet. */
  #later(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      const ranks = [...this.#running.values()];
      this.#open = order.find((rank) => ranks.includes(rank)) ?? 'idle';
      this.#tell();
    }, QUIET_MS);
  }

  #tell(): void {
    for (const [worked, rank] of this.#running) {
      const mayRun = order.indexOf(rank) <= order.indexOf(this.#open);
      if (mayRun && this.#held.delete(worked)) worked.goOn();
      else if (!mayRun && !this.#held.has(worked)) {
        this.#held.add(worked);
        worked.hold();
      }
    }
  }
}

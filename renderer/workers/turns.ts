/** How much somebody waits for a computation: `asked` is waited for, `ahead` will be wanted next, `idle` can wait for both. */
export type Rank = 'asked' | 'ahead' | 'idle';

/** Whoever computes: told to hold at its next pause, and to go on. */
export interface Worked {
  hold(): void;
  goOn(): void;
}

const order: readonly Rank[] = ['asked', 'ahead', 'idle'];
/** Work that nobody waits for goes on only when nothing of a higher rank has run for so long, ms. */
const quietMs: Readonly<Record<Rank, number>> = { asked: 0, ahead: 250, idle: 1000 };

/**
 * Lets what is asked for have the processor to itself: while something of a higher rank runs, the rest holds. What nobody
 * waits for begins a moment late, so that walking quickly through balls or dragging one starts none of it, and is done one
 * after the other, so that a small laptop stays cool and quick.
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
    const ranks = [...this.#running.values()];
    const next = order.find((rank) => ranks.includes(rank)) ?? 'idle';
    this.#timer = setTimeout(() => {
      this.#open = next;
      this.#tell();
    }, quietMs[next]);
  }

  #tell(): void {
    const first = [...this.#running].find(([, rank]) => rank === this.#open)?.[0];
    for (const [worked, rank] of this.#running) {
      const mayRun = rank === 'asked' || (rank === this.#open && worked === first);
      if (mayRun && this.#held.delete(worked)) worked.goOn();
      else if (!mayRun && !this.#held.has(worked)) {
        this.#held.add(worked);
        worked.hold();
      }
    }
  }
}

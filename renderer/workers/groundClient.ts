import type { GroundQuestion, GroundRead } from './readGround.ts';

export interface GroundAsk {
  readonly ticket: number;
  readonly question: GroundQuestion;
}

export interface GroundAnswer {
  readonly ticket: number;
  readonly ground: GroundRead | null;
  readonly problem: { readonly message: string; readonly remedy: string } | null;
}

interface GroundPort {
  postMessage(message: GroundAsk): void;
  onmessage: ((event: MessageEvent<GroundAnswer>) => void) | null;
}

const startWorker = (): GroundPort =>
  new Worker(new URL('./groundWorker.ts', import.meta.url), { type: 'module', name: 'ground' });

/** Asks the ground worker, one question at a time; of those that wait only the newest is kept. */
export class GroundClient {
  readonly #start: () => GroundPort;
  #worker: GroundPort | null = null;
  #running = 0;
  #waiting: GroundAsk | null = null;
  #lastTicket = 0;
  #answer: ((answer: GroundAnswer) => void) | null = null;

  constructor(start: () => GroundPort = startWorker) {
    this.#start = start;
  }

  ask(question: GroundQuestion, answer: (answer: GroundAnswer) => void): void {
    this.#lastTicket += 1;
    this.#answer = answer;
    const ask = { ticket: this.#lastTicket, question };
    if (this.#running === 0) this.#send(ask);
    else this.#waiting = ask;
  }

  /** Wants no answer any more. */
  cancel(): void {
    this.#waiting = null;
    this.#answer = null;
  }

  #send(ask: GroundAsk): void {
    if (this.#worker === null) {
      this.#worker = this.#start();
      this.#worker.onmessage = ({ data }) => this.#receive(data);
    }
    this.#running = ask.ticket;
    this.#worker.postMessage(ask);
  }

  #receive(answer: GroundAnswer): void {
    this.#running = 0;
    const waiting = this.#waiting;
    this.#waiting = null;
    if (waiting !== null) this.#send(waiting);
    else if (answer.ticket === this.#lastTicket) this.#answer?.(answer);
  }
}

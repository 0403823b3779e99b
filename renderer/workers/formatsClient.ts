import { posted } from '../../shared/atlas/recordMap.ts';
import type { Answers, FormatsQuestion, FromFormats, ToFormats } from './formatsChannel.ts';
import type { PlainProblem } from './plainProblem.ts';

/** What of `Worker` is used here; a test hands in its own. */
export interface FormatsPort {
  postMessage(message: ToFormats): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromFormats>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface FormatsListener<K extends keyof Answers> {
  readonly progress: (share: number) => void;
  readonly answer: (answer: Answers[K]) => void;
  /** The reader itself came to an end, from want of memory or a fault of its own. */
  readonly stopped: (problem: PlainProblem) => void;
}

const startWorker = (): FormatsPort =>
  new Worker(new URL('./formatsWorker.ts', import.meta.url), { type: 'module', name: 'formats' });

/**
 * A reader and writer of files, one question at a time. Reading cannot be interrupted from inside, so a question that is
 * no longer wanted ends the worker; the next one starts another. No answer to an older question is ever heard.
 */
export class FormatsClient {
  readonly #start: () => FormatsPort;
  #port: FormatsPort | null = null;
  #busy = false;
  #ticket = 0;

  constructor(start: () => FormatsPort = startWorker) {
    this.#start = start;
  }

  ask<K extends FormatsQuestion['kind']>(
    question: Extract<FormatsQuestion, { kind: K }>,
    listener: FormatsListener<K>,
  ): void {
    this.cancel();
    const port = this.#port ?? this.#start();
    this.#port = port;
    this.#busy = true;
    this.#ticket += 1;
    const ticket = this.#ticket;
    port.onmessage = ({ data }) => {
      if (data.ticket !== this.#ticket) return;
      if ('share' in data) {
        listener.progress(data.share);
        return;
      }
      this.#busy = false;
      // The answer to a question is of its kind; the union of messages cannot tell.
      listener.answer(data.answer as Answers[keyof Answers] & Answers[K]);
    };
    port.onerror = (event) => {
      if (ticket !== this.#ticket) return;
      this.#end();
      listener.stopped({
        code: 'reader-stopped',
        // A worker that cannot be loaded says nothing at all, against the type.
        message: `${question.kind === 'sendOut' ? 'Making the file' : 'Reading'} stopped${event.message ? ` (${event.message})` : ''}.`,
        place: '',
        remedy:
          question.kind === 'sendOut'
            ? 'The atlas is as it was: try again, or another format.'
            : 'The atlas is as it was: try again, or a smaller part of the file.',
      });
    };
    const asked: FormatsQuestion = question;
    port.postMessage({
      ticket,
      question: asked.kind === 'open' ? asked : { ...asked, document: posted(asked.document) },
    });
  }

  /** Wants no answer any more. */
  cancel(): void {
    this.#ticket += 1;
    if (this.#busy) this.#end();
  }

  /** Ends the worker and gives its memory back. */
  close(): void {
    this.#ticket += 1;
    this.#end();
  }

  #end(): void {
    this.#port?.terminate();
    this.#port = null;
    this.#busy = false;
  }
}

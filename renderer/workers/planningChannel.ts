import type { RecordChange } from '../../shared/atlas/documentChanges.ts';
import type { GroundFit, PlanningCall, PlanningCalls } from '../../shared/protocol/planning.ts';
import type { PlainProblem } from './plainProblem.ts';

/** A question without its document, which the worker has. */
export type Sent<K extends PlanningCall> = Omit<PlanningCalls[K][0], 'document'>;

/** One question with its name. */
export type Ask = {
  readonly [K in PlanningCall]: {
    readonly kind: 'ask';
    readonly ticket: number;
    readonly call: K;
    readonly question: Sent<K>;
    /** The question it comes after: it waits until that one has ended. */
    readonly after: number | null;
    /** Whether the answer waits, before its first step, until it may go on. */
    readonly held: boolean;
    /** Whether a first answer is wanted before the firm one. */
    readonly early: boolean;
  };
}[PlanningCall];

/** To the worker. It keeps its own copy of the document, brought up to date by changes sent before a question. */
export type ToWorker =
  | { readonly kind: 'document'; readonly fresh: boolean; readonly changes: readonly RecordChange[] }
  | { readonly kind: 'ground'; readonly fit: GroundFit }
  | Ask
  | Told;

/**
 * A dropped question is given up at the next pause of its answer; `dropped` says that it is. One that is passed over is
 * given up only if its answer has not begun. One on hold waits until it may go on or is dropped.
 */
export interface Told {
  readonly kind: 'drop' | 'pass' | 'hold' | 'goOn';
  readonly ticket: number;
}

/** From the worker: each answer carries the ticket of its question. */
export type FromWorker =
  | { readonly kind: 'progress'; readonly ticket: number; readonly fraction: number }
  /** A first answer to be sharpened by the one that follows. */
  | { readonly kind: 'early'; readonly ticket: number; readonly answer: PlanningCalls[PlanningCall][1] }
  | { readonly kind: 'answer'; readonly ticket: number; readonly answer: PlanningCalls[PlanningCall][1] }
  | { readonly kind: 'dropped'; readonly ticket: number }
  | { readonly kind: 'problem'; readonly ticket: number; readonly problem: PlainProblem };

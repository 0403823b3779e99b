/**
 * Undo and redo over states of any kind. It knows no edits: it is handed whole states (which share what did not change)
 * with an annotation, and undo always lands on an annotated one. A gesture - a drag, an outline being drawn - replaces one
 * open state while it lasts; ending it makes one step, cancelling it leaves none. What is not part of the state, such as a
 * selection, never passes through here and so never clears redo.
 */
export interface History<S> {
  readonly past: readonly Step<S>[];
  readonly present: Step<S>;
  /** The next to redo first. */
  readonly future: readonly Step<S>[];
  /** The state shown while a gesture is in hand; null between gestures. */
  readonly gesture: S | null;
}

export interface Step<S> {
  readonly state: S;
  /** What led to this state; empty for the first. */
  readonly annotation: string;
}

/** Older steps than this are forgotten. */
const MOST_STEPS = 500;

export function historyOf<S>(state: S): History<S> {
  return { past: [], present: { state, annotation: '' }, future: [], gesture: null };
}

/** What is shown: the gesture in hand if there is one. */
export function currentState<S>(history: History<S>): S {
  return history.gesture ?? history.present.state;
}

/** A finished step. A gesture in hand is given up; a state that is the present one is no step. */
export function commit<S>(history: History<S>, state: S, annotation: string): History<S> {
  if (annotation === '') throw new RangeError('a step needs an annotation');
  if (state === history.present.state) return { ...history, gesture: null };
  return {
    past: [...history.past, history.present].slice(-MOST_STEPS),
    present: { state, annotation },
    future: [],
    gesture: null,
  };
}

/** Shows a state in passing, as often as the pointer moves. */
export function gestureTo<S>(history: History<S>, state: S): History<S> {
  return { ...history, gesture: state };
}

/** Makes the gesture in hand one step. */
export function endGesture<S>(history: History<S>, annotation: string): History<S> {
  return history.gesture === null ? history : commit(history, history.gesture, annotation);
}

/** Drops the gesture in hand, as if it had not begun. */
export function cancelGesture<S>(history: History<S>): History<S> {
  return history.gesture === null ? history : { ...history, gesture: null };
}

/** Back to the annotated state before; with a gesture in hand, only that is dropped. */
export function undo<S>(history: History<S>): History<S> {
  if (history.gesture !== null) return cancelGesture(history);
  const before = history.past.at(-1);
  if (before === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: before,
    future: [history.present, ...history.future],
    gesture: null,
  };
}

export function redo<S>(history: History<S>): History<S> {
  const [next, ...rest] = history.future;
  if (next === undefined || history.gesture !== null) return history;
  return { past: [...history.past, history.present], present: next, future: rest, gesture: null };
}

/** What undo would take back, or null. */
export function undoAnnotation<S>(history: History<S>): string | null {
  return history.past.length === 0 ? null : history.present.annotation;
}

export function redoAnnotation<S>(history: History<S>): string | null {
  return history.future[0]?.annotation ?? null;
}

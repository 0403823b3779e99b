import { describe, expect, it } from 'vitest';
import * as h from '../../../shared/atlas/history.ts';

describe('history', () => {
  const start = h.historyOf('blank');
  const two = h.commit(h.commit(start, 'green', 'traced a green'), 'bunker', 'traced a bunker');

  it('lands on annotated states and says what it takes back', () => {
    expect(h.undoAnnotation(two)).toBe('traced a bunker');
    const one = h.undo(two);
    expect([h.currentState(one), h.undoAnnotation(one), h.redoAnnotation(one)]).toEqual([
      'green',
      'traced a green',
      'traced a bunker',
    ]);
    expect(h.redo(one)).toEqual(two);
    expect(h.undo(h.undo(h.undo(two)))).toEqual(h.undo(h.undo(two)));
    expect([h.undoAnnotation(start), h.redoAnnotation(two)]).toEqual([null, null]);
  });

  it('makes a drag one step', () => {
    const dragged = h.endGesture(
      h.gestureTo(h.gestureTo(two, 'bunker 1 m on'), 'bunker 2 m on'),
      'moved a bunker',
    );
    expect(h.currentState(dragged)).toBe('bunker 2 m on');
    expect(h.undo(dragged).present).toEqual(two.present);
  });

  it('leaves nothing of a cancelled gesture, and keeps redo through it', () => {
    const undone = h.undo(two);
    const shown = h.gestureTo(undone, 'half a path');
    expect(h.currentState(shown)).toBe('half a path');
    expect(h.cancelGesture(shown)).toEqual(undone);
    expect(h.undo(shown)).toEqual(undone);
    expect(h.redo(shown)).toEqual(shown);
    expect(h.redo(h.cancelGesture(shown))).toEqual(two);
  });

  it('makes no step of a state that is the present one, nor one without words', () => {
    expect(h.commit(two, 'bunker', 'nothing')).toEqual(two);
    expect(h.endGesture(two, 'nothing')).toBe(two);
    expect(() => h.commit(two, 'x', '')).toThrow('annotation');
  });
});

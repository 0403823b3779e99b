import { createStore } from 'zustand/vanilla';
import type { Edit } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { type Cornered, insertCorner, removeCorner } from '../../shared/atlas/shaping.ts';
import { bearingDeg } from '../../shared/geometry/bearing.ts';
import { planePoint, type PlanePoint } from '../../shared/geometry/points.ts';
import { parseDegrees, parseLength } from '../../shared/units/parse.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { dragEdit } from './dragEdit.ts';
import { cornersOf } from './grips.ts';
import { type Drag, drawsOutline, emptyHandState, type HandContext, type HandState } from './handState.ts';
import { type Drawn, finishedSketch, placedPoint } from './making.ts';
import { isThing, type Thing } from './planeShapes.ts';
import { addCorner, addSide, emptySketch } from './sketch.ts';
import { toolOf } from './tools.ts';

/** What the hand holds and what it makes of it: each edit of the document, whether a gesture or a button asked for it. */
export class HandWork {
  readonly store = createStore<HandState>(() => emptyHandState);
  protected context: (() => HandContext) | null = null;
  protected cursorMoved = false;

  get state(): HandState {
    return this.store.getState();
  }

  type(field: string, text: string): void {
    this.set({ typed: { ...this.state.typed, [field]: text }, trouble: null });
  }

  focusPlate(): void {
    this.focus('plate');
  }

  finish(): void {
    const context = this.context?.();
    const { sketch, tool, purpose, typed } = this.state;
    if (context === undefined || sketch === null) return;
    const least = this.closed() ? 3 : 2;
    if (sketch.corners.length < least) {
      this.say('', `It takes ${least === 3 ? 'three corners' : 'two points'}.`, 'Put down another one.');
      return;
    }
    if (tool === 'measure' && purpose.kind === 'new') {
      this.set({ sketch: null, measured: { ...sketch, next: null, along: [] } });
      return;
    }
    this.make('', () => finishedSketch(context, { tool, purpose, corners: sketch.corners, typed }));
  }

  /** Ends the side being drawn at a typed length, on a typed bearing if there is one. */
  putSide(): void {
    const context = this.context?.();
    const { sketch, typed } = this.state;
    if (context === undefined || sketch === null) return;
    const bare = context.units.system === 'yards' ? 'yd' : 'm';
    this.tryOn('side', () => {
      const lengthM = parseLength(typed['side'] ?? '', bare, context.units.paceM, 'This side');
      const bearing = (typed['bearing'] ?? '').trim();
      const onDeg = bearing === '' ? null : parseDegrees(bearing, 'Bearing');
      const added = addSide(sketch, lengthM, onDeg);
      this.cursorMoved = false;
      this.set({
        sketch: added,
        cursor: added.corners.at(-1) ?? null,
        typed: { ...typed, side: '', bearing: '' },
      });
      this.focusPlate();
    });
  }

  /** Keeps the point that waits, with what was typed for it. */
  keepWaiting(): void {
    this.settleWaiting();
    this.focusPlate();
  }

  takeCornerOut(): void {
    this.withCorner((document, record, ring, index) => removeCorner(document, record, ring, index));
    this.set({ corner: null });
  }

  /** A corner in the middle of the side after the chosen one. */
  putCornerIn(): void {
    this.withCorner((document, record, ring, index) => {
      const corners = cornersOf(document, record, ring);
      const a = corners[index];
      const b = corners[(index + 1) % corners.length];
      if (a === undefined || b === undefined) return null;
      const middle = planePoint((a.eastM + b.eastM) / 2, (a.northM + b.northM) / 2);
      return insertCorner(document, record, ring, index, middle);
    });
    const { corner } = this.state;
    if (corner !== null) this.set({ corner: { ...corner, index: corner.index + 1 } });
  }

  // What the gestures share

  /** A corner, and before it those of an outline it follows there. */
  protected put(at: PlanePoint, along: readonly PlanePoint[] = []): void {
    const { sketch, tool } = this.state;
    if (this.context?.().readOnly === true) return;
    // A measurement done, the next click begins another.
    const before = tool === 'measure' && sketch === null ? emptySketch : (sketch ?? emptySketch);
    this.cursorMoved = false;
    this.set({ sketch: addCorner(before, at, along), measured: null, way: 'shorter', trouble: null });
  }

  protected putPoint(context: HandContext, at: PlanePoint): void {
    const { tool } = this.state;
    if (!this.settleWaiting()) return;
    if (tool === 'spotHeight' || tool === 'slopeReading') {
      this.set({ waiting: { kind: tool, at }, typed: {}, trouble: null });
      this.focus('value');
    } else if (tool === 'holeLocation' || tool === 'ballPosition' || tool === 'landmark') {
      this.make('', () => placedPoint(context, { kind: tool, at, typed: {} }));
    }
  }

  /** A slope reading put down by an arrow pulled the way the ground falls; how steep it is remains to be typed. */
  protected pullArrow(at: PlanePoint, tip: PlanePoint, started: boolean): void {
    if (started && !this.settleWaiting()) return;
    const { waiting, typed } = this.state;
    // What was typed for the reading before cannot be read: it goes first.
    if (!started && waiting?.at !== at) return;
    const bearing = String(Math.round(bearingDeg(at, tip)) % 360);
    this.set({
      waiting: { kind: 'slopeReading', at },
      typed: { ...(started ? {} : typed), bearing },
      trouble: null,
    });
    if (started) this.focus('value');
  }

  /** Keeps a waiting point if something was typed for it, drops it if nothing was; false when what was typed cannot be read. */
  protected settleWaiting(): boolean {
    const context = this.context?.();
    const { waiting, typed } = this.state;
    if (waiting === null || context === undefined) return true;
    if ((typed['value'] ?? '').trim() === '') {
      this.set({ waiting: null, typed: {}, trouble: null });
      return true;
    }
    return this.make('value', () => placedPoint(context, { ...waiting, typed }));
  }

  protected crown(centre: PlanePoint, radiusM: number): void {
    const context = this.context?.();
    if (context === undefined) return;
    const { typed, purpose } = this.state;
    this.make('', () =>
      finishedSketch(context, { tool: 'tree', purpose, corners: [centre], radiusM, typed }),
    );
  }

  /** Makes an edit of what was drawn; a problem is shown at its field and nothing is lost. */
  protected make(field: string, make: () => Drawn): boolean {
    const context = this.context?.();
    if (context === undefined) return false;
    return this.tryOn(field, () => {
      const { edit, heldId } = make();
      context.edit(edit);
      const keepsTool = this.state.purpose.kind === 'new';
      const { width } = this.state.typed;
      this.set({
        sketch: null,
        waiting: null,
        drag: null,
        // The next path is as wide as the last one.
        typed: width === undefined ? {} : { width },
        snap: null,
        trouble: null,
        heldId,
        corner: null,
        ...(keepsTool ? {} : { tool: 'select' as const, purpose: { kind: 'new' } as const }),
      });
    });
  }

  protected tryOn(field: string, work: () => void): boolean {
    try {
      work();
      return true;
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      this.set({
        trouble: {
          message: error.message,
          remedy: error.remedy,
          field: error.place === '' ? field : error.place,
        },
      });
      return false;
    }
  }

  protected say(field: string, message: string, remedy: string): void {
    this.set({ trouble: { field, message: `${message} ${remedy}`, remedy } });
  }

  protected finishDrag(drag: Drag): void {
    const context = this.context?.();
    this.set({ drag: null, snap: null });
    if (context === undefined) return;
    if (drag.kind === 'crown') {
      this.crown(drag.centre, drag.radiusM);
      return;
    }
    if (drag.kind === 'frame') return;
    const edit = dragEdit(context.document, drag);
    if (edit !== null) context.edit(edit);
    if (drag.kind === 'corner') this.set({ corner: { ring: drag.ring, index: drag.index } });
  }

  protected withCorner(
    make: (document: AtlasDocument, record: Cornered, ring: number, index: number) => Edit | null,
  ): void {
    const context = this.context?.();
    const held = this.held(context);
    const { corner } = this.state;
    if (context === undefined || corner === null || (held?.type !== 'area' && held?.type !== 'line')) return;
    this.tryOn('', () => {
      const edit = make(context.document, held, corner.ring, corner.index);
      if (edit !== null) context.edit(edit);
    });
  }

  /** Whether the tool in hand draws an outline or a line. */
  protected draws(): boolean {
    const { tool, purpose } = this.state;
    const { group } = toolOf(tool);
    return group === 'area' || group === 'line' || tool === 'measure' || purpose.kind !== 'new';
  }

  protected closed(): boolean {
    return drawsOutline(this.state);
  }

  protected held(context: HandContext | undefined): Thing | null {
    const { heldId } = this.state;
    const record = heldId === null ? undefined : context?.document.records.get(heldId);
    return isThing(record) ? record : null;
  }

  protected focus(on: string): void {
    this.set({ focus: { on, turn: this.state.focus.turn + 1 } });
  }

  protected set(change: Partial<HandState>): void {
    // Whoever takes hold of one thing, or of none, lets go of those held with the one before.
    this.store.setState('heldId' in change ? { others: [], ...change } : change);
  }
}

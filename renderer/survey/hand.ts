import { createStore } from 'zustand/vanilla';
import { type Edit, removeRecords } from '../../shared/atlas/edits.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { type Cornered, insertCorner, removeCorner, turnRecords } from '../../shared/atlas/shaping.ts';
import { planePoint, type PlanePoint } from '../../shared/geometry/points.ts';
import { distanceM } from '../../shared/geometry/ring.ts';
import { METRES_PER_FOOT, METRES_PER_YARD } from '../../shared/units/conversions.ts';
import { parseDegrees, parseLength } from '../../shared/units/parse.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import { dragEdit } from './dragEdit.ts';
import { cornerAt, cornersOf, gripAt, isNear, middleOf, pulled, REACH_PX, snappedPlace } from './grips.ts';
import {
  type Drag,
  emptyHandState,
  type HandContext,
  type HandState,
  type Purpose,
  type Spot,
} from './handState.ts';
import { copyThing, type Drawn, finishedSketch, placedPoint } from './making.ts';
import { isThing, type Thing, thingAt, thingsInOrder } from './planeShapes.ts';
import {
  addCorner,
  addSide,
  emptySketch,
  endStroke,
  startStroke,
  strokeTo,
  takeBack,
  withoutLastIfNear,
} from './sketch.ts';
import { toolForKey, type ToolId, toolOf } from './tools.ts';
import { thingWords } from './words.ts';

/** Freehand strokes are thinned to this or to a pixel and a half, whichever is coarser. */
const STROKE_TOLERANCE_M = 0.08;
const KEYS_REST_MS = 700;
/** A crown of a tree set down with one click. */
export const USUAL_CROWN_M = 2.75;

const steps: Readonly<Record<string, readonly [east: number, north: number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

/**
 * The person's hand on the plate: tools, the outline being drawn, the thing held and the drag under way. It turns pointer
 * and keys into edits, one for each gesture; a gesture given up leaves nothing behind. It knows no DOM.
 */
export class Hand {
  readonly store = createStore<HandState>(() => emptyHandState);
  #context: (() => HandContext) | null = null;
  #pressed: { readonly spot: Spot; readonly handle: Drag | null; moved: boolean } | null = null;
  #cursorMoved = false;
  #rest: ReturnType<typeof setTimeout> | undefined;

  /** Tells where to find the document; null while no plate is shown. */
  attach(context: (() => HandContext) | null): void {
    if (context === null) this.#settleKeys();
    this.#context = context;
  }

  get state(): HandState {
    return this.store.getState();
  }

  choose(tool: ToolId): void {
    this.#settleKeys();
    if (!this.#settleWaiting()) return;
    this.#set({
      tool,
      purpose: { kind: 'new' },
      sketch: null,
      drag: null,
      typed: {},
      trouble: null,
      corner: null,
    });
    if (tool !== 'select') this.#set({ heldId: null });
    this.focusPlate();
  }

  /** Draws an outline or line that changes something there is. */
  drawFor(purpose: Purpose, tool: ToolId): void {
    this.choose(tool);
    this.#set({
      purpose,
      heldId: purpose.kind === 'cut' || purpose.kind === 'split' ? purpose.areaId : null,
    });
  }

  hold(id: string | null): void {
    this.#settleKeys();
    this.#set({
      tool: 'select',
      purpose: { kind: 'new' },
      heldId: id,
      corner: null,
      sketch: null,
      drag: null,
      typed: {},
      trouble: null,
    });
  }

  type(field: string, text: string): void {
    this.#set({ typed: { ...this.state.typed, [field]: text }, trouble: null });
  }

  focusPlate(): void {
    this.#focus('plate');
  }

  // Pointer

  /** Returns whether the hand takes the pointer; else the map pans with it. */
  press(spot: Spot): boolean {
    const context = this.#context?.();
    this.#settleKeys();
    this.#set({ cursor: null });
    if (context === undefined || context.readOnly) {
      this.#pressed = { spot, handle: null, moved: false };
      return false;
    }
    const held = this.state.tool === 'select' ? this.#held(context) : null;
    const handle = held === null ? null : gripAt(context.document, held, spot);
    this.#pressed = { spot, handle, moved: false };
    return this.state.tool !== 'select' || handle !== null;
  }

  dragTo(spot: Spot): void {
    const pressed = this.#pressed;
    const context = this.#context?.();
    if (pressed === null || context === undefined) return;
    const away = distanceM(pressed.spot.at, spot.at);
    if (!pressed.moved && away < REACH_PX.drag * spot.metresPerPx) return;
    const started = !pressed.moved;
    pressed.moved = true;
    const { tool, sketch, purpose } = this.state;
    this.#set({ pointer: spot.at });
    if (pressed.handle !== null) {
      this.#set({ drag: pulled(context.document, pressed.handle, spot) });
      return;
    }
    if (tool === 'tree' && purpose.kind === 'new' && (sketch === null || sketch.corners.length === 0)) {
      const centre = pressed.spot.at;
      this.#set({ drag: { kind: 'crown', centre, radiusM: distanceM(centre, spot.at) } });
      return;
    }
    if (!this.#draws()) return;
    const from = started ? snappedPlace(context.document, pressed.spot, null) : null;
    const begun = from === null ? (sketch ?? emptySketch) : startStroke(sketch ?? emptySketch, from);
    this.#set({ sketch: strokeTo(begun, spot.at, REACH_PX.stroke * spot.metresPerPx), snap: null });
  }

  release(spot: Spot): void {
    const pressed = this.#pressed;
    this.#pressed = null;
    if (pressed === null) return;
    const { drag, sketch } = this.state;
    if (!pressed.moved) {
      this.#tap(spot);
      return;
    }
    if (drag !== null) this.#finishDrag(drag);
    else if (sketch !== null && sketch.stroke !== null) {
      const toleranceM = Math.max(STROKE_TOLERANCE_M, 1.5 * spot.metresPerPx);
      const closes =
        this.#closed() && isNear(sketch.corners[0] ?? sketch.stroke[0], spot, 2 * REACH_PX.close);
      const ended = endStroke(sketch, toleranceM);
      const whole = closes ? withoutLastIfNear(ended, 2 * REACH_PX.close * spot.metresPerPx) : ended;
      this.#set({ sketch: whole });
      if (closes && whole.corners.length >= 4) this.finish();
    }
  }

  /** A second finger came down, or the system took the pointer away. */
  dropGesture(): void {
    this.#pressed = null;
    const { sketch } = this.state;
    this.#set({
      drag: null,
      sketch: sketch === null || sketch.corners.length === 0 ? null : { ...sketch, stroke: null },
    });
  }

  hover(spot: Spot | null): void {
    if (spot === null) {
      this.#set({ pointer: null, snap: null });
      return;
    }
    const { sketch } = this.state;
    if (!this.#draws()) {
      this.#set({ pointer: spot.at, snap: null });
      return;
    }
    const context = this.#context?.();
    const at = context === undefined ? spot.at : snappedPlace(context.document, spot, null);
    this.#cursorMoved = false;
    this.#set({
      pointer: spot.at,
      snap: at === spot.at ? null : at,
      cursor: null,
      sketch: sketch === null ? null : { ...sketch, next: at },
    });
  }

  // Keys

  /** Returns whether the key was for the hand. */
  key(key: string, { shift, onPlate }: { readonly shift: boolean; readonly onPlate: boolean }): boolean {
    const context = this.#context?.();
    if (context === undefined) return false;
    const step = steps[key];
    const { sketch, drag, waiting, heldId, corner } = this.state;
    if (key === 'Escape') return this.#giveUp();
    if (onPlate) {
      if (step !== undefined) return this.#step(context, step, shift);
      if (key === 'Enter') return this.#enter(context);
      if (key === ' ' && this.#draws()) {
        this.#put(this.state.cursor ?? sketch?.next ?? context.middle());
        return true;
      }
    }
    if (key === 'Backspace' && sketch !== null) {
      this.#set({ sketch: takeBack(sketch) });
      return true;
    }
    if ((key === 'Delete' || key === 'Backspace') && heldId !== null && drag === null && !context.readOnly) {
      if (corner !== null) this.takeCornerOut();
      else this.takeOut();
      return true;
    }
    if (key === '[' || key === ']') return this.#walkCorners(context, key === ']' ? 1 : -1);
    if (key === ',' || key === '.') return this.#walkThings(context, key === '.' ? 1 : -1);
    if (sketch !== null && sketch.corners.length > 0 && /^[0-9.]$/.test(key)) {
      this.type('side', key);
      this.#focus('side');
      return true;
    }
    const tool = toolForKey(shift ? key.toUpperCase() : key.toLowerCase());
    if (tool === undefined || waiting !== null || (context.readOnly && tool.group !== 'hand')) return false;
    this.choose(tool.id);
    return true;
  }

  // What the panel's buttons do

  finish(): void {
    const context = this.#context?.();
    const { sketch, tool, purpose, typed } = this.state;
    if (context === undefined || sketch === null) return;
    const least = this.#closed() ? 3 : 2;
    if (sketch.corners.length < least) {
      this.#say('', `It takes ${least === 3 ? 'three corners' : 'two points'}.`, 'Put down another one.');
      return;
    }
    if (tool === 'measure' && purpose.kind === 'new') {
      this.#set({ sketch: null });
      return;
    }
    this.#make('', () => finishedSketch(context, { tool, purpose, corners: sketch.corners, typed }));
  }

  /** Ends the side being drawn at a typed length, on a typed bearing if there is one. */
  putSide(): void {
    const context = this.#context?.();
    const { sketch, typed } = this.state;
    if (context === undefined || sketch === null) return;
    const bare = context.units.system === 'yards' ? 'yd' : 'm';
    this.#tryOn('side', () => {
      const lengthM = parseLength(typed['side'] ?? '', bare, context.units.paceM, 'This side');
      const bearing = (typed['bearing'] ?? '').trim();
      const onDeg = bearing === '' ? null : parseDegrees(bearing, 'Bearing');
      const added = addSide(sketch, lengthM, onDeg);
      this.#cursorMoved = false;
      this.#set({
        sketch: added,
        cursor: added.corners.at(-1) ?? null,
        typed: { ...typed, side: '', bearing: '' },
      });
      this.focusPlate();
    });
  }

  /** Keeps the point that waits, with what was typed for it. */
  keepWaiting(): void {
    this.#settleWaiting();
    this.focusPlate();
  }

  takeOut(): void {
    const context = this.#context?.();
    const held = this.#held(context);
    if (context === undefined || held === null) return;
    context.edit(removeRecords(`took out ${thingWords(held)}`, [held.id]));
    this.#set({ heldId: null, corner: null });
  }

  takeCornerOut(): void {
    this.#withCorner((document, record, ring, index) => removeCorner(document, record, ring, index));
    this.#set({ corner: null });
  }

  /** A corner in the middle of the side after the chosen one. */
  putCornerIn(): void {
    this.#withCorner((document, record, ring, index) => {
      const corners = cornersOf(document, record, ring);
      const a = corners[index];
      const b = corners[(index + 1) % corners.length];
      if (a === undefined || b === undefined) return null;
      const middle = planePoint((a.eastM + b.eastM) / 2, (a.northM + b.northM) / 2);
      return insertCorner(document, record, ring, index, middle);
    });
    const { corner } = this.state;
    if (corner !== null) this.#set({ corner: { ...corner, index: corner.index + 1 } });
  }

  copy(): void {
    const context = this.#context?.();
    const held = this.#held(context);
    if (context === undefined || held === null) return;
    this.#make('', () => copyThing(context, held));
  }

  turnBy(turnDeg: number): void {
    const context = this.#context?.();
    const held = this.#held(context);
    if (context === undefined || held === null) return;
    context.edit(
      turnRecords(`turned ${thingWords(held)}`, [held.id], middleOf(context.document, held), turnDeg),
    );
  }

  // Inside

  #tap(spot: Spot): void {
    const context = this.#context?.();
    if (context === undefined) return;
    const { tool, sketch } = this.state;
    if (tool === 'select' || context.readOnly) {
      const thing = thingAt(context.document, spot.at, REACH_PX.thing * spot.metresPerPx);
      const held = this.#held(context);
      const pressedCorner = held === null ? null : cornerAt(context.document, held, spot);
      if (pressedCorner !== null) this.#set({ corner: pressedCorner });
      else this.hold(thing?.id ?? null);
      return;
    }
    if (!this.#draws()) {
      this.#putPoint(context, spot.at);
      return;
    }
    if (tool === 'tree' && this.state.purpose.kind === 'new' && sketch === null) {
      this.#crown(spot.at, USUAL_CROWN_M);
      return;
    }
    const corners = sketch?.corners ?? [];
    const last = corners.at(-1);
    const closing = this.#closed() && corners.length >= 3 && isNear(corners[0], spot, REACH_PX.close);
    if (closing || (corners.length >= 2 && isNear(last, spot, 3))) {
      this.finish();
      return;
    }
    this.#put(snappedPlace(context.document, spot, null));
  }

  #put(at: PlanePoint): void {
    const { sketch, tool } = this.state;
    if (this.#context?.().readOnly === true) return;
    // A measurement done, the next click begins another.
    const before = tool === 'measure' && sketch === null ? emptySketch : (sketch ?? emptySketch);
    this.#cursorMoved = false;
    this.#set({ sketch: addCorner(before, at), trouble: null });
  }

  #putPoint(context: HandContext, at: PlanePoint): void {
    const { tool } = this.state;
    if (!this.#settleWaiting()) return;
    if (tool === 'spotHeight' || tool === 'slopeReading') {
      this.#set({ waiting: { kind: tool, at }, typed: {}, trouble: null });
      this.#focus('value');
    } else if (tool === 'holeLocation' || tool === 'ballPosition' || tool === 'landmark') {
      this.#make('', () => placedPoint(context, { kind: tool, at, typed: {} }));
    }
  }

  /** Keeps a waiting point if something was typed for it, drops it if nothing was; false when what was typed cannot be read. */
  #settleWaiting(): boolean {
    const context = this.#context?.();
    const { waiting, typed } = this.state;
    if (waiting === null || context === undefined) return true;
    if ((typed['value'] ?? '').trim() === '') {
      this.#set({ waiting: null, typed: {}, trouble: null });
      return true;
    }
    return this.#make('value', () => placedPoint(context, { ...waiting, typed }));
  }

  #crown(centre: PlanePoint, radiusM: number): void {
    const context = this.#context?.();
    if (context === undefined) return;
    const { typed, purpose } = this.state;
    this.#make('', () =>
      finishedSketch(context, { tool: 'tree', purpose, corners: [centre], radiusM, typed }),
    );
  }

  /** Makes an edit of what was drawn; a problem is shown at its field and nothing is lost. */
  #make(field: string, make: () => Drawn): boolean {
    const context = this.#context?.();
    if (context === undefined) return false;
    return this.#tryOn(field, () => {
      const { edit, heldId } = make();
      context.edit(edit);
      const keepsTool = this.state.purpose.kind === 'new';
      this.#set({
        sketch: null,
        waiting: null,
        drag: null,
        typed: {},
        snap: null,
        trouble: null,
        heldId,
        corner: null,
        ...(keepsTool ? {} : { tool: 'select' as const, purpose: { kind: 'new' } as const }),
      });
    });
  }

  #tryOn(field: string, work: () => void): boolean {
    try {
      work();
      return true;
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
      this.#set({
        trouble: {
          message: error.message,
          remedy: error.remedy,
          field: error.place === '' ? field : error.place,
        },
      });
      return false;
    }
  }

  #say(field: string, message: string, remedy: string): void {
    this.#set({ trouble: { field, message, remedy } });
  }

  /** Escape: the gesture in hand first, then the tool, then the thing held. */
  #giveUp(): boolean {
    const { drag, sketch, waiting, tool, heldId, purpose, corner } = this.state;
    clearTimeout(this.#rest);
    this.#pressed = null;
    this.#set({ trouble: null, snap: null });
    if (drag !== null) this.#set({ drag: null });
    else if (waiting !== null) {
      this.#set({ waiting: null, typed: {} });
      this.focusPlate();
    } else if (sketch !== null) {
      this.#set({ sketch: null, typed: {} });
      this.focusPlate();
    } else if (tool !== 'select' || purpose.kind !== 'new') this.hold(heldId);
    else if (corner !== null) this.#set({ corner: null });
    else if (heldId !== null) this.hold(null);
    else return false;
    return true;
  }

  #step(context: HandContext, [east, north]: readonly [number, number], far: boolean): boolean {
    const { tool, heldId, cursor, pointer, sketch, drag } = this.state;
    const yards = context.units.system === 'yards';
    const stepM = yards ? (far ? METRES_PER_YARD : METRES_PER_FOOT) : far ? 1 : 0.25;
    const moved = (at: PlanePoint): PlanePoint =>
      planePoint(at.eastM + east * stepM, at.northM + north * stepM);
    const held = tool === 'select' ? this.#held(context) : null;
    if (held !== null && heldId !== null) {
      if (context.readOnly) return true;
      this.#set({ drag: this.#steppedDrag(context, held, drag, moved) });
      clearTimeout(this.#rest);
      this.#rest = setTimeout(() => this.#settleKeys(), KEYS_REST_MS);
      return true;
    }
    const from = cursor ?? sketch?.corners.at(-1) ?? pointer ?? context.middle();
    const at = moved(from);
    this.#cursorMoved = true;
    this.#set({ cursor: at, snap: null, sketch: sketch === null ? null : { ...sketch, next: at } });
    return true;
  }

  #steppedDrag(
    context: HandContext,
    held: Thing,
    drag: Drag | null,
    moved: (at: PlanePoint) => PlanePoint,
  ): Drag | null {
    const { corner } = this.state;
    if (drag?.kind === 'corner' || drag?.kind === 'move') return { ...drag, to: moved(drag.to) };
    if (corner !== null && (held.type === 'area' || held.type === 'line')) {
      const at = cornersOf(context.document, held, corner.ring)[corner.index];
      return at === undefined
        ? null
        : { kind: 'corner', id: held.id, ...corner, isNew: false, to: moved(at) };
    }
    const from = middleOf(context.document, held);
    return { kind: 'move', id: held.id, from, to: moved(from) };
  }

  /** Ends a move by keys: a run of presses is one step. */
  #settleKeys(): void {
    clearTimeout(this.#rest);
    this.#rest = undefined;
    const { drag } = this.state;
    if (drag !== null && this.#pressed === null) this.#finishDrag(drag);
  }

  #enter(context: HandContext): boolean {
    const { sketch, cursor, drag, tool } = this.state;
    if (drag !== null) {
      this.#settleKeys();
      return true;
    }
    if (this.#draws()) {
      if (sketch !== null && sketch.corners.length > 0 && !this.#cursorMoved) {
        this.finish();
        return true;
      }
      const at = cursor ?? this.state.pointer ?? context.middle();
      if (tool === 'tree' && this.state.purpose.kind === 'new' && sketch === null)
        this.#crown(at, USUAL_CROWN_M);
      else {
        this.#put(at);
        this.#set({ cursor: at });
      }
      return true;
    }
    if (tool === 'select') {
      if (cursor === null) return false;
      const thing = thingAt(context.document, cursor, 0.5);
      this.hold(thing?.id ?? null);
      return true;
    }
    this.#putPoint(context, cursor ?? this.state.pointer ?? context.middle());
    return true;
  }

  #walkCorners(context: HandContext, by: 1 | -1): boolean {
    const held = this.#held(context);
    if (held?.type !== 'area' && held?.type !== 'line') return false;
    const rings = held.type === 'area' ? held.rings : [held.positions];
    const all = rings.flatMap((ring, r) => ring.map((_, index) => ({ ring: r, index })));
    const { corner } = this.state;
    const at = all.findIndex(({ ring, index }) => ring === corner?.ring && index === corner.index);
    const next = all[(at < 0 ? (by === 1 ? 0 : all.length - 1) : at + by + all.length) % all.length];
    this.#settleKeys();
    this.#set({ tool: 'select', corner: next ?? null });
    return true;
  }

  #walkThings(context: HandContext, by: 1 | -1): boolean {
    const all = thingsInOrder(context.document);
    if (all.length === 0) return false;
    const at = all.findIndex(({ id }) => id === this.state.heldId);
    const next = all[(at < 0 ? (by === 1 ? 0 : all.length - 1) : at + by + all.length) % all.length];
    this.hold(next?.id ?? null);
    return true;
  }

  #finishDrag(drag: Drag): void {
    const context = this.#context?.();
    this.#set({ drag: null, snap: null });
    if (context === undefined) return;
    if (drag.kind === 'crown') {
      this.#crown(drag.centre, drag.radiusM);
      return;
    }
    const edit = dragEdit(context.document, drag);
    if (edit !== null) context.edit(edit);
    if (drag.kind === 'corner') this.#set({ corner: { ring: drag.ring, index: drag.index } });
  }

  #withCorner(
    make: (document: AtlasDocument, record: Cornered, ring: number, index: number) => Edit | null,
  ): void {
    const context = this.#context?.();
    const held = this.#held(context);
    const { corner } = this.state;
    if (context === undefined || corner === null || (held?.type !== 'area' && held?.type !== 'line')) return;
    this.#tryOn('', () => {
      const edit = make(context.document, held, corner.ring, corner.index);
      if (edit !== null) context.edit(edit);
    });
  }

  /** Whether the tool in hand draws an outline or a line. */
  #draws(): boolean {
    const { tool, purpose } = this.state;
    const { group } = toolOf(tool);
    return group === 'area' || group === 'line' || tool === 'measure' || purpose.kind !== 'new';
  }

  #closed(): boolean {
    const { tool, purpose } = this.state;
    return purpose.kind === 'cut' || (purpose.kind === 'new' && toolOf(tool).group === 'area');
  }

  #held(context: HandContext | undefined): Thing | null {
    const { heldId } = this.state;
    const record = heldId === null ? undefined : context?.document.records.get(heldId);
    return isThing(record) ? record : null;
  }

  #focus(on: string): void {
    this.#set({ focus: { on, turn: this.state.focus.turn + 1 } });
  }

  #set(change: Partial<HandState>): void {
    this.store.setState(change);
  }
}

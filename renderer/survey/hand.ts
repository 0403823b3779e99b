import { planePoint, type PlanePoint } from '../../shared/geometry/points.ts';
import { distanceM } from '../../shared/geometry/ring.ts';
import {
  cornerAt,
  gripAt,
  groupGripAt,
  isCornered,
  isNear,
  pulled,
  REACH_PX,
  snappedPlace,
} from './grips.ts';
import type { Drag, HandContext, Purpose, Spot } from './handState.ts';
import { HandTrace } from './handTrace.ts';
import { keyStepM, keySteps, steppedDrag } from './keySteps.ts';
import { nextCorner, nextThing } from './keyWalks.ts';
import { thingAt } from './planeShapes.ts';
import { emptySketch, endStroke, startStroke, strokeTo, takeBack, withoutLastIfNear } from './sketch.ts';
import { toolForKey, type ToolId } from './tools.ts';

/** Freehand strokes are thinned to this or to a pixel and a half, whichever is coarser. */
const STROKE_TOLERANCE_M = 0.08;
const KEYS_REST_MS = 700;
/** A crown of a tree set down with one click. */
const USUAL_CROWN_M = 2.75;

/**
 * The person's hand on the plate: tools, the outline being drawn, the thing held and the drag under way. It turns pointer
 * and keys into edits, one for each gesture; a gesture given up leaves nothing behind. It knows no DOM.
 */
export class Hand extends HandTrace {
  #pressed: { readonly spot: Spot; readonly handle: Drag | null; moved: boolean } | null = null;
  #rest: ReturnType<typeof setTimeout> | undefined;

  /** Tells where to find the document; null while no plate is shown. */
  attach(context: (() => HandContext) | null): void {
    if (context === null) this.#settleKeys();
    this.context = context;
  }

  choose(tool: ToolId): void {
    this.#settleKeys();
    if (!this.settleWaiting()) return;
    this.set({
      tool,
      purpose: { kind: 'new' },
      sketch: null,
      measured: null,
      drag: null,
      typed: {},
      trouble: null,
      corner: null,
    });
    if (tool !== 'select' && tool !== 'several') this.set({ heldId: null });
    this.focusPlate();
  }

  /** Draws an outline or line that changes something there is. */
  drawFor(purpose: Purpose, tool: ToolId): void {
    this.choose(tool);
    this.set({
      purpose,
      heldId: purpose.kind === 'cut' || purpose.kind === 'split' ? purpose.areaId : null,
    });
  }

  hold(id: string | null): void {
    this.#settleKeys();
    this.set({
      tool: 'select',
      purpose: { kind: 'new' },
      heldId: id,
      corner: null,
      sketch: null,
      measured: null,
      drag: null,
      typed: {},
      trouble: null,
    });
  }

  // Pointer

  /** Returns whether the hand takes the pointer; else the map pans with it. */
  press(spot: Spot): boolean {
    const context = this.context?.();
    this.#settleKeys();
    this.set({ cursor: null });
    if (context === undefined || context.readOnly) {
      this.#pressed = { spot, handle: null, moved: false };
      return false;
    }
    const handle = this.#gripAt(context, spot);
    this.#pressed = { spot, handle, moved: false };
    return this.state.tool !== 'select' || handle !== null;
  }

  dragTo(spot: Spot): void {
    const pressed = this.#pressed;
    const context = this.context?.();
    if (pressed === null || context === undefined) return;
    const away = distanceM(pressed.spot.at, spot.at);
    if (!pressed.moved && away < REACH_PX.drag * spot.metresPerPx) return;
    const started = !pressed.moved;
    pressed.moved = true;
    const { tool, sketch, purpose } = this.state;
    this.set({ pointer: spot.at });
    if (pressed.handle !== null) {
      this.set({ drag: pulled(context.document, pressed.handle, spot) });
      return;
    }
    if (tool === 'tree' && purpose.kind === 'new' && (sketch === null || sketch.corners.length === 0)) {
      const centre = pressed.spot.at;
      this.set({ drag: { kind: 'crown', centre, radiusM: distanceM(centre, spot.at) } });
      return;
    }
    if (tool === 'slopeReading' && purpose.kind === 'new') {
      this.pullArrow(pressed.spot.at, spot.at, started);
      return;
    }
    if (!this.draws()) return;
    const from = started ? snappedPlace(context.document, pressed.spot, null) : null;
    const begun = from === null ? (sketch ?? emptySketch) : startStroke(sketch ?? emptySketch, from);
    this.set({ sketch: strokeTo(begun, spot.at, REACH_PX.stroke * spot.metresPerPx), snap: null });
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
    if (drag?.kind === 'frame') {
      const context = this.context?.();
      this.set({ drag: null });
      if (context !== undefined) this.holdFramed(context, drag);
    } else if (drag !== null) this.finishDrag(drag);
    else if (sketch !== null && sketch.stroke !== null) {
      const toleranceM = Math.max(STROKE_TOLERANCE_M, 1.5 * spot.metresPerPx);
      const closes = this.closed() && isNear(sketch.corners[0] ?? sketch.stroke[0], spot, 2 * REACH_PX.close);
      const ended = endStroke(sketch, toleranceM);
      const whole = closes ? withoutLastIfNear(ended, 2 * REACH_PX.close * spot.metresPerPx) : ended;
      this.set({ sketch: whole });
      if (closes && whole.corners.length >= 4) this.finish();
    }
  }

  /** A second finger came down, or the system took the pointer away. */
  dropGesture(): void {
    this.#pressed = null;
    const { sketch } = this.state;
    this.set({
      drag: null,
      sketch: sketch === null || sketch.corners.length === 0 ? null : { ...sketch, stroke: null },
    });
  }

  hover(spot: Spot | null): void {
    if (spot === null) {
      this.set({ pointer: null, snap: null });
      return;
    }
    const { sketch } = this.state;
    if (!this.draws()) {
      this.set({ pointer: spot.at, snap: null });
      return;
    }
    const context = this.context?.();
    const at = context === undefined ? spot.at : snappedPlace(context.document, spot, null);
    this.cursorMoved = false;
    this.set({
      pointer: spot.at,
      snap: at === spot.at ? null : at,
      cursor: null,
      sketch: sketch === null ? null : this.pointedAt(sketch, spot, at),
    });
  }

  // Keys

  /** Returns whether the key was for the hand. */
  key(key: string, { shift, onPlate }: { readonly shift: boolean; readonly onPlate: boolean }): boolean {
    const context = this.context?.();
    if (context === undefined) return false;
    const step = keySteps[key];
    const { sketch, drag, waiting, heldId, corner } = this.state;
    if (key === 'Escape') return this.#giveUp();
    if (onPlate) {
      if (step !== undefined) return this.#step(context, step, shift);
      if (key === 'Enter') return this.#enter(context);
      if (key === ' ' && this.draws()) {
        this.putWalked(context, this.state.cursor ?? sketch?.next ?? context.middle());
        return true;
      }
    }
    if (key === 'Backspace' && sketch !== null) {
      this.set({ sketch: takeBack(sketch) });
      return true;
    }
    if ((key === 'Delete' || key === 'Backspace') && heldId !== null && drag === null && !context.readOnly) {
      if (corner !== null) this.takeCornerOut();
      else this.takeOut();
      return true;
    }
    if (key.toLowerCase() === 'x' && sketch !== null) {
      this.otherWay();
      return true;
    }
    if (key === '[' || key === ']') return this.#walkCorners(context, key === ']' ? 1 : -1);
    if (key === '<' || key === '>') return this.#walkThings(context, key === '>' ? 1 : -1, true);
    if (key === ',' || key === '.') return this.#walkThings(context, key === '.' ? 1 : -1);
    if (sketch !== null && sketch.corners.length > 0 && /^[0-9.]$/.test(key)) {
      this.type('side', key);
      this.focus('side');
      return true;
    }
    const tool = toolForKey(shift ? key.toUpperCase() : key.toLowerCase());
    if (tool === undefined || waiting !== null || (context.readOnly && tool.group !== 'hand')) return false;
    this.choose(tool.id);
    return true;
  }

  // Inside

  /** What a press takes: a frame to be pulled, or a handle of what is held. */
  #gripAt(context: HandContext, spot: Spot): Drag | null {
    const { tool } = this.state;
    const held = this.allHeld(context);
    const [first] = held;
    if (tool === 'several' || (tool === 'select' && spot.shift === true)) {
      // Without a keyboard, what is held can still be moved.
      const grip = tool === 'several' ? groupGripAt(context.document, held, spot) : null;
      return grip?.kind === 'move' ? grip : { kind: 'frame', from: spot.at, to: spot.at };
    }
    if (tool !== 'select') return null;
    if (first === undefined) return null;
    return held.length > 1
      ? groupGripAt(context.document, held, spot)
      : gripAt(context.document, first, spot);
  }

  #tap(spot: Spot): void {
    const context = this.context?.();
    if (context === undefined) return;
    const { tool, sketch } = this.state;
    if (tool === 'select' || tool === 'several' || context.readOnly) {
      const thing = thingAt(context.document, spot.at, REACH_PX.thing * spot.metresPerPx);
      if (tool === 'several' || spot.shift === true) {
        if (thing !== null) this.alsoHold(thing.id);
        return;
      }
      const held = this.held(context);
      const pressedCorner = held === null ? null : cornerAt(context.document, held, spot);
      if (pressedCorner !== null) this.set({ corner: pressedCorner });
      else this.hold(thing?.id ?? null);
      return;
    }
    if (!this.draws()) {
      this.putPoint(context, spot.at);
      return;
    }
    if (tool === 'tree' && this.state.purpose.kind === 'new' && sketch === null) {
      this.crown(spot.at, USUAL_CROWN_M);
      return;
    }
    this.putOrFinish(context, spot);
  }

  /** Escape: the gesture in hand first, then the tool, then the thing held. */
  #giveUp(): boolean {
    const { drag, sketch, measured, waiting, tool, heldId, purpose, corner } = this.state;
    clearTimeout(this.#rest);
    this.#pressed = null;
    this.set({ trouble: null, snap: null });
    if (drag !== null) this.set({ drag: null });
    else if (waiting !== null) {
      this.set({ waiting: null, typed: {} });
      this.focusPlate();
    } else if (sketch !== null) {
      this.set({ sketch: null, typed: {} });
      this.focusPlate();
    } else if (measured !== null) this.set({ measured: null });
    else if (tool === 'several') this.set({ tool: 'select' });
    else if (tool !== 'select' || purpose.kind !== 'new') this.hold(heldId);
    else if (corner !== null) this.set({ corner: null });
    else if (heldId !== null) this.hold(null);
    else return false;
    return true;
  }

  #step(context: HandContext, [east, north]: readonly [number, number], far: boolean): boolean {
    const { tool, heldId, cursor, pointer, sketch, drag } = this.state;
    const stepM = keyStepM(context.units.system, far);
    const moved = (at: PlanePoint): PlanePoint =>
      planePoint(at.eastM + east * stepM, at.northM + north * stepM);
    const held = tool === 'select' ? this.held(context) : null;
    if (held !== null && heldId !== null) {
      if (context.readOnly) return true;
      const { corner } = this.state;
      this.set({ drag: steppedDrag(context.document, this.allHeld(context), drag, corner, moved) });
      clearTimeout(this.#rest);
      this.#rest = setTimeout(() => this.#settleKeys(), KEYS_REST_MS);
      return true;
    }
    const from = cursor ?? sketch?.corners.at(-1) ?? pointer ?? context.middle();
    this.walkTo(context, moved(from), stepM);
    return true;
  }

  /** Ends a move by keys: a run of presses is one step. */
  #settleKeys(): void {
    clearTimeout(this.#rest);
    this.#rest = undefined;
    const { drag } = this.state;
    if (drag !== null && this.#pressed === null) this.finishDrag(drag);
  }

  #enter(context: HandContext): boolean {
    const { sketch, cursor, drag, tool } = this.state;
    if (drag !== null) {
      this.#settleKeys();
      return true;
    }
    if (this.draws()) {
      if (sketch !== null && sketch.corners.length > 0 && !this.cursorMoved) {
        this.finish();
        return true;
      }
      const at = cursor ?? this.state.pointer ?? context.middle();
      if (tool === 'tree' && this.state.purpose.kind === 'new' && sketch === null)
        this.crown(at, USUAL_CROWN_M);
      else this.putWalked(context, at);
      return true;
    }
    if (tool === 'select' || tool === 'several') {
      if (cursor === null) return false;
      const thing = thingAt(context.document, cursor, 0.5);
      if (tool === 'select') this.hold(thing?.id ?? null);
      else if (thing !== null) this.alsoHold(thing.id);
      return true;
    }
    this.putPoint(context, cursor ?? this.state.pointer ?? context.middle());
    return true;
  }

  #walkCorners(context: HandContext, by: 1 | -1): boolean {
    const held = this.held(context);
    if (!isCornered(held)) return false;
    const next = nextCorner(held, this.state.corner, by);
    this.#settleKeys();
    this.set({ tool: 'select', corner: next });
    return true;
  }

  /** To the next thing, letting go of the one before or, with Shift, taking it along. */
  #walkThings(context: HandContext, by: 1 | -1, along = false): boolean {
    const { heldId, others } = this.state;
    const last = along ? (others.at(-1) ?? heldId) : heldId;
    const next = nextThing(context.document, last, by);
    if (next === null) return false;
    if (!along || heldId === null) this.hold(next.id);
    else if (next.id !== heldId && !others.includes(next.id)) this.alsoHold(next.id);
    return true;
  }
}

import { createStore } from 'zustand/vanilla';
import { findRecord, frameOf } from '../../../shared/atlas/document.ts';
import { putRecords } from '../../../shared/atlas/edits.ts';
import { placeAtlas } from '../../../shared/atlas/moving.ts';
import { pictureAffine, pictureCorners } from '../../../shared/atlas/pictures.ts';
import { settingDown } from '../../../shared/atlas/settingDown.ts';
import { movedAffine, onPlane, onSheet, sameAsSheet, turnedAffine } from '../../../shared/geometry/affine.ts';
import { bearingDeg } from '../../../shared/geometry/bearing.ts';
import { localFrame } from '../../../shared/geometry/localFrame.ts';
import { type LonLat, planePoint, type PlanePoint } from '../../../shared/geometry/points.ts';
import { boundingBox, distanceM, pointInPolygon } from '../../../shared/geometry/ring.ts';
import { METRES_PER_INCH } from '../../../shared/units/conversions.ts';
import { parseDegrees, parseLength } from '../../../shared/units/parse.ts';
import { InputProblem } from '../../../shared/words/inputProblem.ts';
import { preferencesStore } from '../../store/preferences.ts';
import { snappedPlace } from '../grips.ts';
import type { Spot } from '../handState.ts';
import { keyStepM, keySteps } from '../keySteps.ts';
import { fitPairs } from './placingFit.ts';
import { nothingPlaced, type PlacingContext, type PlacingState, type PlacingWay } from './placingState.ts';
import { grip, middleOf, outlineOf, turnedDeg } from './placingView.ts';

const KEY_TURN_DEG = { fine: 0.5, far: 5 } as const;
const DRAG_PX = 4;

/**
 * The hand that lays something under or over the sheet: by moving and turning, by known points or by a known distance.
 * Until it is done nothing of the document changes; then it is one step. It knows no DOM.
 */
export class PlacingHand {
  readonly store = createStore<PlacingState>(() => nothingPlaced);
  #context: (() => PlacingContext) | null = null;
  #pressed: Spot | null = null;

  get state(): PlacingState {
    return this.store.getState();
  }

  attach(context: (() => PlacingContext) | null): void {
    this.#context = context;
  }

  /** The view of the plate, if one is shown. */
  view(): Pick<PlacingContext, 'middle' | 'widthM'> | null {
    return this.#context?.() ?? null;
  }

  beginPicture(document: PlacingContext['document'], id: string, note = ''): void {
    const picture = findRecord(document, 'picture', id);
    if (picture === undefined) return;
    const affine = pictureAffine(frameOf(document), picture);
    const { widthPx: x, heightPx: y, opacity } = picture;
    this.#begin({
      subject: { kind: 'picture', id },
      ...{ affine, start: affine, opacity, note },
      outline: [
        { x: 0, y: 0 },
        { x, y: 0 },
        { x, y },
        { x: 0, y },
      ],
    });
  }

  /** Lays the sheet down about a place to start from; `points` are what is drawn on it. */
  beginSheet(at: LonLat, turnDeg: number, points: readonly PlanePoint[]): void {
    const box = boundingBox(points) ?? { westM: -20, southM: -20, eastM: 20, northM: 20 };
    const turn = (turnDeg * Math.PI) / 180;
    const affine = turnedAffine(sameAsSheet, planePoint(0, 0), Math.cos(turn), Math.sin(turn));
    const over = localFrame(at);
    this.#begin({
      subject: { kind: 'sheet', over },
      ...{ affine, start: affine },
      outline: [
        { x: box.westM, y: box.southM },
        { x: box.eastM, y: box.southM },
        { x: box.eastM, y: box.northM },
        { x: box.westM, y: box.northM },
      ],
    });
  }

  beginSource({
    id,
    name,
    eastM,
    northM,
  }: {
    id: string;
    name: string;
    eastM: number;
    northM: number;
  }): void {
    const affine = movedAffine(sameAsSheet, eastM, northM);
    this.#begin({ subject: { kind: 'source', id, name }, affine, start: affine });
  }

  choose(way: PlacingWay): void {
    this.#set({ way, span: [], trouble: null, cursor: null });
    this.#focus('plate');
  }

  /** Keeps the new lie as one step. */
  finish(): void {
    const context = this.#context?.();
    const { subject, affine, start, opacity } = this.state;
    if (subject === null || context === undefined) return;
    this.#end();
    if (subject.kind === 'source') {
      const { baseLayers } = preferencesStore.getState();
      const shift = { eastM: rounded(affine.c), northM: rounded(affine.f) };
      preferencesStore.setState({
        baseLayers: baseLayers.map((layer) => (layer.id === subject.id ? { ...layer, ...shift } : layer)),
      });
    } else if (subject.kind === 'sheet') {
      const { anchor, turnDeg } = settingDown(subject.over, affine);
      context.edit(placeAtlas('placed the atlas on the earth', anchor, turnDeg));
    } else {
      const picture = findRecord(context.document, 'picture', subject.id);
      if (picture === undefined || (affine === start && opacity === picture.opacity)) return;
      const corners =
        affine === start ? picture.corners : pictureCorners(frameOf(context.document), affine, picture);
      context.edit(putRecords(`placed the picture ${picture.name}`, [{ ...picture, corners, opacity }]));
    }
  }

  letGo(): void {
    if (this.state.subject !== null) this.#end();
  }

  // Pointer

  press(spot: Spot): boolean {
    this.#pressed = spot;
    this.#set({ cursor: null });
    const kind = this.state.way === 'move' ? grip(this.state, spot) : null;
    if (kind === null) return false;
    this.#set({ drag: { kind, from: spot.at, before: this.state.affine, turnDeg: 0 } });
    return true;
  }

  dragTo(spot: Spot): void {
    const { drag } = this.state;
    if (drag === null || this.#pressed === null) return;
    const { from, before } = drag;
    this.#set({ pointer: spot.at });
    if (distanceM(from, spot.at) < DRAG_PX * spot.metresPerPx && this.state.affine === before) return;
    if (drag.kind === 'move') {
      const { eastM, northM } = spot.at;
      this.#lie(movedAffine(before, eastM - from.eastM, northM - from.northM));
      return;
    }
    const centre = middleOf(this.state.outline, before);
    const turnDeg = bearingDeg(centre, spot.at) - bearingDeg(centre, from);
    this.#set({ drag: { ...drag, turnDeg } });
    this.#lie(turned(before, centre, turnDeg, 1));
  }

  release(spot: Spot): void {
    const { drag } = this.state;
    this.#pressed = null;
    this.#set({ drag: null });
    if (drag === null && this.state.way !== 'move') this.#put(spot.at, spot);
  }

  dropGesture(): void {
    const { drag } = this.state;
    this.#pressed = null;
    if (drag !== null) this.#set({ affine: drag.before, drag: null });
  }

  hover(spot: Spot | null): void {
    this.#set(spot === null ? { pointer: null } : { pointer: spot.at, cursor: null });
  }

  // Keys

  /** Returns whether the key was for placing; while something is being placed, drawing hears none. */
  key(key: string, { shift, onPlate }: { readonly shift: boolean; readonly onPlate: boolean }): boolean {
    const context = this.#context?.();
    const { subject, way } = this.state;
    if (subject === null || context === undefined) return false;
    if (key === 'Escape') {
      this.letGo();
      return true;
    }
    if (!onPlate) return false;
    const step = keySteps[key];
    if (step !== undefined) {
      this.#step(context, step, shift);
      return true;
    }
    if (key === 'Enter' || key === ' ') {
      if (way === 'move') this.finish();
      else this.#put(this.state.cursor ?? this.state.pointer ?? context.middle(), null);
    } else if (key === 'Backspace') this.takeBack();
    else if (way === 'move' && subject.kind !== 'source' && '[]{}'.includes(key)) {
      const by = '{}'.includes(key) ? KEY_TURN_DEG.far : KEY_TURN_DEG.fine;
      this.turnBy('[{'.includes(key) ? -by : by);
    }
    return true;
  }

  // From the panel

  turnBy(turnDeg: number): void {
    const { affine, outline } = this.state;
    this.#lie(turned(affine, middleOf(outline, affine), turnDeg, 1));
  }

  /** Throws InputProblem for what cannot be read. */
  turnTo(typed: string): void {
    this.turnBy(parseDegrees(typed, 'Turned') - turnedDeg(this.state.affine));
  }

  /** Makes the picture so wide. Throws InputProblem. */
  widthTo(typed: string): void {
    const { affine, outline } = this.state;
    const [from, to] = outlineOf(outline, affine);
    if (from === undefined || to === undefined) return;
    const wide = this.#lengthTyped(typed, 'Width');
    this.#lie(turned(affine, middleOf(outline, affine), 0, wide / distanceM(from, to)));
  }

  fade(opacity: number): void {
    this.#set({ opacity });
  }

  keepShape(keepShape: boolean): void {
    this.#set({ keepShape });
    this.#set(fitPairs(this.state, this.state.pairs));
  }

  takeOut(index: number): void {
    this.#set(fitPairs(this.state, this.state.pairs.toSpliced(index, 1)));
    this.#focus('plate');
  }

  /** Takes back the last point put down. */
  takeBack(): void {
    const { pairs, span, way } = this.state;
    if (way === 'distance') this.#set({ span: span.slice(0, -1) });
    const last = pairs.at(-1);
    if (way !== 'points' || last === undefined) return;
    if (last.at === null) this.#set({ pairs: pairs.slice(0, -1) });
    else this.#set(fitPairs(this.state, pairs.with(-1, { ...last, at: null })));
  }

  /** Gives the place of the point that waits for it by its position on the earth. */
  putPosition(position: LonLat): void {
    const context = this.#context?.();
    if (context === undefined) return;
    const { subject } = this.state;
    const frame = subject?.kind === 'sheet' ? subject.over : frameOf(context.document);
    this.#complete(frame.toPlane(position));
  }

  /** Enlarges the picture so that the two points lie so far apart. Throws InputProblem. */
  lengthTo(typed: string): void {
    const { affine, span } = this.state;
    const [from, to] = span.map((on) => onPlane(affine, on));
    if (from === undefined || to === undefined) return;
    const lengthM = this.#lengthTyped(typed, 'Distance');
    const between = planePoint((from.eastM + to.eastM) / 2, (from.northM + to.northM) / 2);
    this.#lie(turned(affine, between, 0, lengthM / distanceM(from, to)));
    this.#set({ trouble: null });
  }

  // Inside

  #begin(state: Partial<PlacingState>): void {
    this.store.setState({ ...nothingPlaced, ...state }, true);
    this.#focus('plate');
  }

  #end(): void {
    this.#pressed = null;
    this.store.setState(nothingPlaced, true);
  }

  #set(change: Partial<PlacingState>): void {
    this.store.setState(change);
  }

  #focus(on: 'plate' | 'length'): void {
    this.#set({ focus: { on, turn: this.state.focus.turn + 1 } });
  }

  /** A lie given by hand: what known points made of it no longer holds. */
  #lie(affine: PlacingState['affine']): void {
    this.#set({ affine, pairs: [], missesM: [], rmsM: null, trouble: null });
  }

  #lengthTyped(typed: string, place: string): number {
    const units = this.#context?.().units ?? { system: 'metres', paceM: 1 };
    const lengthM = parseLength(typed, units.system === 'yards' ? 'yd' : 'm', units.paceM, place);
    if (lengthM < 0.01 || lengthM > 20_000)
      throw new InputProblem(
        'bad-length',
        `"${typed}" does not fit.`,
        place,
        'Give a length from an inch to some miles.',
      );
    return lengthM;
  }

  #step(context: PlacingContext, [east, north]: readonly [number, number], far: boolean): void {
    const { way, affine, cursor, pointer } = this.state;
    const { system } = context.units;
    if (way === 'move') {
      const fineM = system === 'yards' ? 4 * METRES_PER_INCH : 0.1;
      const stepM = far ? keyStepM(system, true) : fineM;
      this.#lie(movedAffine(affine, east * stepM, north * stepM));
      return;
    }
    const stepM = keyStepM(system, far);
    const from = cursor ?? pointer ?? context.middle();
    this.#set({ cursor: planePoint(from.eastM + east * stepM, from.northM + north * stepM) });
  }

  /** A click, or Enter at the cross: first a point of the subject, then where it lies. */
  #put(at: PlanePoint, spot: Spot | null): void {
    const context = this.#context?.();
    const { way, affine, pairs, span, outline, subject } = this.state;
    if (context === undefined || subject === null) return;
    const pending = pairs.at(-1)?.at === null;
    if (way === 'points' && pending) {
      this.#complete(
        spot === null || subject.kind === 'sheet' ? at : snappedPlace(context.document, spot, null),
      );
      return;
    }
    const on = onSheet(affine, at);
    if (on === null) return;
    if (subject.kind === 'picture' && !pointInPolygon(at, [outlineOf(outline, affine)])) {
      this.#set({
        trouble: {
          message: 'That is not on the picture.',
          remedy: 'Choose something that can be seen in it.',
        },
      });
      return;
    }
    if (way === 'points') this.#set({ pairs: [...pairs, { on, at: null }], trouble: null });
    else {
      const next = span.length >= 2 ? [on] : [...span, on];
      this.#set({ span: next, trouble: null });
      if (next.length === 2) this.#focus('length');
    }
  }

  #complete(at: PlanePoint): void {
    const { pairs } = this.state;
    const last = pairs.at(-1);
    if (last?.at !== null) return;
    this.#set(fitPairs(this.state, pairs.with(-1, { ...last, at })));
    this.#focus('plate');
  }
}

function turned(
  affine: PlacingState['affine'],
  centre: PlanePoint,
  turnDeg: number,
  scale: number,
): PlacingState['affine'] {
  const turn = (turnDeg * Math.PI) / 180;
  return turnedAffine(affine, centre, scale * Math.cos(turn), scale * Math.sin(turn));
}

/** Centimetres are finer than any map picture. */
const rounded = (metres: number): number => Math.round(metres * 100) / 100;

/** The one hand of the window that places things. */
export const placing = new PlacingHand();

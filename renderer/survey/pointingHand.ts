import { createStore } from 'zustand/vanilla';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { planePoint, type PlanePoint } from '../../shared/geometry/points.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { emptyHand, type HandDrawing } from '../map/handDrawing.ts';
import type { PointAsked } from '../store/pointAsked.ts';
import { snappedPlace } from './grips.ts';
import type { Spot } from './handState.ts';
import { keyStepM, keySteps } from './keySteps.ts';

export interface PointingState {
  readonly points: readonly PointAsked[];
  /** Which of them is wanted now; null while nothing is asked. */
  readonly index: number | null;
  readonly cursor: PlanePoint | null;
  readonly pointer: PlanePoint | null;
  /** Grows each time that something is asked for. */
  readonly turn: number;
}

export interface PointingContext {
  readonly document: AtlasDocument;
  readonly units: UnitsPreference;
  readonly middle: () => PlanePoint;
}

const nothing = { points: [], index: null, cursor: null, pointer: null } as const;

/** The hand that shows where points of a list lie, one after another, and changes nothing itself. It knows no DOM. */
export class PointingHand {
  readonly store = createStore<PointingState>(() => ({ ...nothing, turn: 0 }));
  #context: (() => PointingContext) | null = null;
  #done: (points: readonly PointAsked[]) => void = () => undefined;

  attach(context: (() => PointingContext) | null): void {
    this.#context = context;
  }

  /** Asks for the point `index`, then for those after it that have no place; `done` is told all of them at the end. */
  begin(points: readonly PointAsked[], index: number, done: (points: readonly PointAsked[]) => void): void {
    this.#done = done;
    this.store.setState({ ...nothing, points, index, turn: this.store.getState().turn + 1 });
  }

  /** Goes on to the next point without a place; ends after the last. */
  skip(): void {
    const { points, index } = this.store.getState();
    if (index === null) return;
    const next = points.findIndex(({ at }, i) => i > index && at === null);
    if (next === -1) this.finish();
    else this.store.setState({ index: next, turn: this.store.getState().turn + 1 });
  }

  /** Ends with what has been shown so far. */
  finish(): void {
    const { points, index } = this.store.getState();
    if (index === null) return;
    this.store.setState(nothing);
    this.#done(points);
  }

  press(): boolean {
    return false;
  }

  dragTo(): void {
    return;
  }

  dropGesture(): void {
    return;
  }

  /** A click, unless the map was moved with it. */
  release(spot: Spot): void {
    const context = this.#context?.();
    if (context !== undefined) this.#put(snappedPlace(context.document, spot, null));
  }

  hover(spot: Spot | null): void {
    this.store.setState(spot === null ? { pointer: null } : { pointer: spot.at, cursor: null });
  }

  /** Returns whether the key was for pointing. */
  key(key: string, { shift, onPlate }: { readonly shift: boolean; readonly onPlate: boolean }): boolean {
    const context = this.#context?.();
    const { index, cursor, pointer } = this.store.getState();
    if (index === null || context === undefined) return false;
    if (key === 'Escape') {
      this.finish();
      return true;
    }
    if (!onPlate) return false;
    const from = cursor ?? pointer ?? context.middle();
    const step = keySteps[key];
    if (step !== undefined) {
      const stepM = keyStepM(context.units.system, shift);
      this.store.setState({
        cursor: planePoint(from.eastM + step[0] * stepM, from.northM + step[1] * stepM),
      });
    } else if (key === 'Enter' || key === ' ') this.#put(from);
    return true;
  }

  #put(at: PlanePoint): void {
    const { points, index } = this.store.getState();
    const asked = index === null ? undefined : points[index];
    if (index === null || asked === undefined) return;
    this.store.setState({ points: points.with(index, { ...asked, at }) });
    this.skip();
  }
}

/** What pointing shows over the plate: every point that has a place, and the cross of the keys. */
export const pointingDrawing = ({ points, cursor }: PointingState): HandDrawing => ({
  ...emptyHand,
  cursor,
  pairs: points.flatMap(({ label, at }) => (at === null ? [] : [{ label, from: at, to: at }])),
});

/** The one hand of the window that shows places. */
export const pointing = new PointingHand();

import type * as L from 'leaflet';
import type { LocalFrame } from '../../shared/geometry/localFrame.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { type PlateView, projection } from '../../shared/plate/view.ts';
import { BaseLayers } from './baseLayers.ts';
import { PictureLayer } from './pictureLayer.ts';
import { PlateLayer, plateViewOf } from './plateLayer.ts';
import { fitPoints, latLngOf, plainMap } from './plateMapBase.ts';

/** A place on the plate under a pointer. */
export interface Spot {
  readonly at: PlanePoint;
  readonly metresPerPx: number;
  /** Held down, nothing snaps. */
  readonly alt: boolean;
  /** Held down, one thing more is taken. */
  readonly shift?: boolean;
}

export interface SurveyStageEvents {
  /** Returns whether the hand takes this pointer; else the map pans with it. */
  press(spot: Spot): boolean;
  dragTo(spot: Spot): void;
  release(spot: Spot): void;
  /** The gesture is off: another finger came down, or the pointer was taken away. */
  dropGesture(): void;
  hover(spot: Spot | null): void;
  view(view: PlateView): void;
}

/** The Leaflet map of a survey: base layers, the ground, what stands on it, and the hand on top; pointers go to the hand first. */
export class SurveyStage {
  readonly map: L.Map;
  readonly base: BaseLayers;
  readonly pictures: PictureLayer;
  readonly under: PlateLayer;
  readonly over: PlateLayer;
  readonly hand: PlateLayer;
  readonly #frame: LocalFrame;
  readonly #element: HTMLElement;
  readonly #events: SurveyStageEvents;
  readonly #down = new Set<number>();
  /** Taken away: another plane has a map of its own, and this one shows nothing any more. */
  #gone = false;
  #held: number | null = null;
  #watched: number | null = null;

  constructor(
    element: HTMLElement,
    frame: LocalFrame,
    events: SurveyStageEvents,
    onBaseTrouble: (unreachable: readonly string[]) => void,
    onBrokenPicture: (id: string) => void,
  ) {
    this.#frame = frame;
    this.#element = element;
    this.#events = events;
    this.map = plainMap(element, frame, 13);
    for (const [name, z] of [
      ['base', 250],
      ['pictures', 260],
      ['under', 300],
      ['over', 400],
      ['hand', 450],
    ] as const)
      this.map.createPane(name).style.zIndex = String(z);
    this.base = new BaseLayers(this.map, onBaseTrouble);
    this.pictures = new PictureLayer(frame, onBrokenPicture).addTo(this.map);
    this.under = new PlateLayer(frame, 'under').addTo(this.map);
    this.over = new PlateLayer(frame, 'over').addTo(this.map);
    this.hand = new PlateLayer(frame, 'hand').addTo(this.map);
    this.map.on('zoomend moveend resize', () => events.view(plateViewOf(this.map, frame)));
    // Before Leaflet sees the press, so that it pans only where the hand has nothing.
    element.addEventListener('pointerdown', this.#press, true);
    element.addEventListener('pointermove', this.#move);
    element.addEventListener('pointerup', this.#up);
    element.addEventListener('pointercancel', this.#cancel);
    element.addEventListener('pointerleave', this.#leave);
    element.addEventListener('contextmenu', preventDefault);
  }

  fit(points: readonly PlanePoint[]): void {
    if (this.#gone) return;
    fitPoints(this.map, this.#frame, points, 22.5);
  }

  /** Moves the map only if the place is not well inside. */
  bringIn(at: PlanePoint): void {
    if (!this.map.getBounds().pad(-0.08).contains(latLngOf(this.#frame, at)))
      this.map.panTo(latLngOf(this.#frame, at), { animate: false });
  }

  middle(): PlanePoint {
    return plateViewOf(this.map, this.#frame).centre;
  }

  metresPerPx(): number {
    return 1 / plateViewOf(this.map, this.#frame).unitsPerM;
  }

  widthM(): number {
    return this.map.getSize().x / plateViewOf(this.map, this.#frame).unitsPerM;
  }

  zoom(by: number): void {
    this.map.setZoom(this.map.getZoom() + by, { animate: false });
  }

  remove(): void {
    const element = this.#element;
    element.removeEventListener('pointerdown', this.#press, true);
    element.removeEventListener('pointermove', this.#move);
    element.removeEventListener('pointerup', this.#up);
    element.removeEventListener('pointercancel', this.#cancel);
    element.removeEventListener('pointerleave', this.#leave);
    element.removeEventListener('contextmenu', preventDefault);
    this.#gone = true;
    this.base.show([]);
    this.map.remove();
  }

  readonly #press = (event: PointerEvent): void => {
    this.#down.add(event.pointerId);
    if (this.#down.size > 1) {
      // Two fingers move and scale the map.
      this.#held = null;
      this.#watched = null;
      this.map.dragging.enable();
      this.#events.dropGesture();
      return;
    }
    if (event.button !== 0) {
      this.map.dragging.enable();
      return;
    }
    if (this.#events.press(this.#spot(event))) {
      this.#held = event.pointerId;
      this.map.dragging.disable();
      this.#element.setPointerCapture(event.pointerId);
    } else {
      this.#watched = event.pointerId;
      this.#from = [event.clientX, event.clientY];
      this.map.dragging.enable();
    }
  };
  #from: readonly [number, number] = [0, 0];

  readonly #move = (event: PointerEvent): void => {
    if (this.#held === event.pointerId) this.#events.dragTo(this.#spot(event));
    else if (this.#down.size === 0) this.#events.hover(this.#spot(event));
  };

  readonly #up = (event: PointerEvent): void => {
    this.#down.delete(event.pointerId);
    const panned = Math.hypot(event.clientX - this.#from[0], event.clientY - this.#from[1]) > 4;
    if (this.#held === event.pointerId || (this.#watched === event.pointerId && !panned))
      this.#events.release(this.#spot(event));
    else this.#events.dropGesture();
    this.#held = null;
    this.#watched = null;
  };

  readonly #cancel = (event: PointerEvent): void => {
    this.#down.delete(event.pointerId);
    this.#held = null;
    this.#watched = null;
    this.#events.dropGesture();
  };

  readonly #leave = (): void => {
    if (this.#down.size === 0) this.#events.hover(null);
  };

  #spot(event: PointerEvent): Spot {
    const view = plateViewOf(this.map, this.#frame);
    const box = this.#element.getBoundingClientRect();
    return {
      at: projection(view).toPlane([event.clientX - box.left, event.clientY - box.top]),
      metresPerPx: 1 / view.unitsPerM,
      alt: event.altKey,
      shift: event.shiftKey,
    };
  }
}

const preventDefault = (event: Event): void => event.preventDefault();

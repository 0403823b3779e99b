import * as L from 'leaflet';
import type { LocalFrame } from '../../shared/geometry/localFrame.ts';
import { type LonLat, lonLat, type PlanePoint, planePoint } from '../../shared/geometry/points.ts';

export interface Handle {
  readonly id: string;
  readonly kind: 'ball' | 'flag' | 'landing';
  /** Its whole name for someone who cannot see the plate. */
  readonly name: string;
  readonly at: PlanePoint;
  readonly chosen: boolean;
}

export interface HandleEvents {
  choose(id: string): void;
  /** While the hand or the keys hold it. */
  hold(id: string, at: LonLat): void;
  /** Let go: this is where it is now. */
  drop(id: string, at: LonLat): void;
}

/** Keys let go for this long, ms, end one move: a run of presses is one step to undo. */
const KEYS_REST_MS = 600;

const steps: Readonly<Record<string, readonly [east: number, north: number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

/** Touch and focus targets over the drawn balls and flags: the drawing shows them, these move them. */
export class Handles {
  readonly #map: L.Map;
  readonly #frame: LocalFrame;
  readonly #events: HandleEvents;
  readonly #markers = new Map<string, { readonly marker: L.Marker; handle: Handle }>();
  /** Metres an arrow key moves a thing; with Shift four times as far. */
  #stepM = 0;
  #movedByKeys: { readonly id: string; at: PlanePoint; timer: ReturnType<typeof setTimeout> } | null = null;
  #draggable = true;

  constructor(map: L.Map, frame: LocalFrame, events: HandleEvents) {
    this.#map = map;
    this.#frame = frame;
    this.#events = events;
  }

  show(handles: readonly Handle[], draggable: boolean, stepM: number): void {
    this.#stepM = stepM;
    const allAnew = draggable !== this.#draggable;
    this.#draggable = draggable;
    const wanted = new Set(handles.map(({ id }) => id));
    for (const [id, { marker }] of this.#markers) {
      if (wanted.has(id)) continue;
      marker.remove();
      this.#markers.delete(id);
    }
    for (const handle of handles) {
      const known = this.#markers.get(handle.id);
      // While one is moved the others stay as they are.
      if (!allAnew && known !== undefined && isSame(known.handle, handle)) continue;
      const entry = known ?? { marker: this.#make(handle), handle };
      entry.handle = handle;
      this.#markers.set(handle.id, entry);
      if (this.#movedByKeys?.id !== handle.id) entry.marker.setLatLng(this.#latLng(handle.at));
      entry.marker.setZIndexOffset(handle.chosen ? 1000 : 0);
      const element = entry.marker.getElement();
      element?.setAttribute('aria-label', handle.name);
      element?.setAttribute('aria-pressed', String(handle.chosen));
      if (draggable) entry.marker.dragging?.enable();
      else entry.marker.dragging?.disable();
    }
  }

  remove(): void {
    this.#letGoOfKeys();
    for (const { marker } of this.#markers.values()) marker.remove();
    this.#markers.clear();
  }

  #latLng(at: PlanePoint): L.LatLng {
    const [lon, lat] = this.#frame.toLonLat(at);
    return L.latLng(lat, lon);
  }

  #make(handle: Handle): L.Marker {
    const { id, kind } = handle;
    const marker = L.marker(this.#latLng(handle.at), {
      icon: L.divIcon({
        className: `handle ${kind}`,
        iconSize: kind === 'flag' ? [30, 40] : [32, 32],
        iconAnchor: kind === 'flag' ? [8, 32] : [16, 16],
      }),
      draggable: true,
      autoPan: false,
      keyboard: true,
      bubblingMouseEvents: false,
    });
    const here = (): LonLat => lonLat(marker.getLatLng().lng, marker.getLatLng().lat);
    marker.on('click', () => this.#events.choose(id));
    marker.on('dragstart', () => this.#events.choose(id));
    marker.on('drag', () => this.#events.hold(id, here()));
    marker.on('dragend', () => this.#events.drop(id, here()));
    marker.addTo(this.#map);
    const element = marker.getElement();
    element?.setAttribute('data-id', id);
    element?.setAttribute('aria-roledescription', 'movable');
    element?.addEventListener('keydown', (event) => this.#key(event, id));
    element?.addEventListener('focus', () => {
      this.#map.panInside(marker.getLatLng(), { padding: [30, 44], animate: false });
    });
    element?.addEventListener('blur', () => this.#letGoOfKeys());
    return marker;
  }

  #key(event: KeyboardEvent, id: string): void {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      event.stopPropagation();
      this.#letGoOfKeys();
      this.#events.choose(id);
      return;
    }
    const step = steps[event.key];
    const entry = this.#markers.get(id);
    if (step === undefined || entry === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    if (!this.#draggable) return;
    const far = this.#stepM * (event.shiftKey ? 4 : 1);
    const from = this.#movedByKeys?.id === id ? this.#movedByKeys.at : entry.handle.at;
    const at = planePoint(from.eastM + step[0] * far, from.northM + step[1] * far);
    if (this.#movedByKeys !== null) clearTimeout(this.#movedByKeys.timer);
    else this.#events.choose(id);
    this.#movedByKeys = { id, at, timer: setTimeout(() => this.#letGoOfKeys(), KEYS_REST_MS) };
    entry.marker.setLatLng(this.#latLng(at));
    this.#events.hold(id, this.#frame.toLonLat(at));
  }

  #letGoOfKeys(): void {
    const moved = this.#movedByKeys;
    if (moved === null) return;
    clearTimeout(moved.timer);
    this.#movedByKeys = null;
    this.#events.drop(moved.id, this.#frame.toLonLat(moved.at));
  }
}

const isSame = (a: Handle, b: Handle): boolean =>
  a.at === b.at && a.chosen === b.chosen && a.name === b.name && a.kind === b.kind;

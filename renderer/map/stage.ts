import type * as L from 'leaflet';
import { type LonLat, lonLat, type PlanePoint } from '../../shared/geometry/points.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import type { PlateView } from '../../shared/plate/view.ts';
import { type HandleEvents, Handles } from './handles.ts';
import { PlateLayer, plateViewOf } from './plateLayer.ts';
import { fitPoints, latLngOf, MOST_ZOOM, plainMap, TAG_PX } from './plateMapBase.ts';

export interface StageEvents extends HandleEvents {
  /** The part of the plane inside the frame has changed. */
  view(view: PlateView): void;
  /** The bare ground was clicked. */
  click(at: LonLat): void;
}

/** The Leaflet map with its two drawings and its handles. */
export class Stage {
  readonly map: L.Map;
  readonly under: PlateLayer;
  readonly over: PlateLayer;
  readonly handles: Handles;
  readonly #frame: Scene['frame'];

  constructor(element: HTMLElement, scene: Scene, events: StageEvents) {
    this.#frame = scene.frame;
    this.map = plainMap(element, scene.frame, 15);
    this.map.createPane('under').style.zIndex = '300';
    this.map.createPane('over').style.zIndex = '400';
    this.under = new PlateLayer(scene.frame, 'under').addTo(this.map);
    this.over = new PlateLayer(scene.frame, 'over').addTo(this.map);
    this.handles = new Handles(this.map, scene.frame, events);
    this.map.on('click', ({ latlng }) => events.click(lonLat(latlng.lng, latlng.lat)));
    this.map.on('zoomend moveend resize', () => events.view(plateViewOf(this.map, scene.frame)));
  }

  fit(points: readonly PlanePoint[]): void {
    fitPoints(this.map, this.#frame, points, MOST_ZOOM);
  }

  /** Moves only if a point, or the tag of a flag in it, is outside; then to all that is to be seen with them. */
  keepInSight(points: readonly PlanePoint[], withThem: readonly PlanePoint[]): void {
    const size = this.map.getSize();
    if (size.x < 40 || points.length === 0) return;
    const visible = this.map.getBounds().pad(-0.06);
    const shown = (at: L.LatLng): boolean =>
      visible.contains(at) && this.map.latLngToContainerPoint(at).y >= TAG_PX - 2;
    if (points.every((point) => shown(latLngOf(this.#frame, point)))) return;
    this.fit(withThem);
  }

  middle(): LonLat {
    const { lng, lat } = this.map.getCenter();
    return lonLat(lng, lat);
  }

  /** Tells the place under the pointer, null when it leaves. Returns how to stop. */
  watchPointer(tell: (at: PlanePoint | null) => void): () => void {
    const move = ({ latlng }: L.LeafletMouseEvent): void =>
      tell(this.#frame.toPlane(lonLat(latlng.lng, latlng.lat)));
    const leave = (): void => tell(null);
    this.map.on('mousemove', move).on('mouseout', leave);
    return () => {
      this.map.off('mousemove', move).off('mouseout', leave);
    };
  }

  zoom(by: number): void {
    this.map.setZoom(this.map.getZoom() + by, { animate: false });
  }

  remove(): void {
    this.handles.remove();
    this.map.remove();
  }
}

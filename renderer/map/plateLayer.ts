import * as L from 'leaflet';
import type { LocalFrame } from '../../shared/geometry/localFrame.ts';
import { lonLat, planePoint } from '../../shared/geometry/points.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { Box, PlateView } from '../../shared/plate/view.ts';
import { patchDrawing } from '../ui/patchDrawing.ts';
import { svgElement } from '../ui/svgElement.ts';

/** Draws the part of the plane a view shows; `visible` is the part of its box inside the map's frame. */
export type DrawPlate = (view: PlateView, visible: Box) => SvgNode;

const SVG = 'http://www.w3.org/2000/svg';
/** How far beyond the visible map a layer draws, as a share of its size, so that a small pan shows no blank edge. */
const BEYOND = 0.2;
const REDRAW_ON = 'viewreset zoomend moveend resize';

/** The view of the plane a map has now, its box growing from the visible part by a share on each side. */
export function plateViewOf(map: L.Map, frame: LocalFrame, beyond = 0): PlateView {
  const size = map.getSize();
  const middle = map.containerPointToLatLng(size.divideBy(2));
  const centre = frame.toPlane(lonLat(middle.lng, middle.lat));
  const pixel = (northM: number): L.Point => {
    const [lon, lat] = frame.toLonLat(planePoint(centre.eastM, centre.northM + northM));
    return map.project(L.latLng(lat, lon));
  };
  // Web Mercator is a similarity near a point: over a hole its scale varies by a few millimetres in 100 m.
  const unitsPerM = pixel(-5).distanceTo(pixel(5)) / 10;
  return {
    centre,
    unitsPerM,
    upBearingDeg: 0,
    box: { x: 0, y: 0, width: size.x * (1 + 2 * beyond), height: size.y * (1 + 2 * beyond) },
  };
}

/** What of a map a drawing depends on, pane shift included. */
function placeOf(map: L.Map): string {
  const { x, y } = map.getSize();
  const { lat, lng } = map.getCenter();
  const pane = map.containerPointToLayerPoint([0, 0]);
  return [x, y, lat, lng, map.getZoom(), pane.x, pane.y].join(' ');
}

/** A drawing in the map: made again when the zoom or the drawing changes or a pan ends, only moved while panning. */
export class PlateLayer extends L.Layer {
  readonly #frame: LocalFrame;
  readonly #pane: string;
  #svg: SVGSVGElement | null = null;
  #draw: DrawPlate | null = null;
  /** What the element holds now. */
  #drawn: SvgNode | null = null;
  /** Where the map was when this was last drawn. */
  #drawnAt = '';

  constructor(frame: LocalFrame, pane: string) {
    super();
    this.#frame = frame;
    this.#pane = pane;
  }

  override onAdd(map: L.Map): this {
    const svg = document.createElementNS(SVG, 'svg');
    svg.setAttribute('class', 'plate-layer');
    svg.setAttribute('aria-hidden', 'true');
    this.getPane(this.#pane)?.append(svg);
    this.#svg = svg;
    map.on(REDRAW_ON, this.#follow);
    this.#redraw();
    return this;
  }

  override onRemove(map: L.Map): this {
    map.off(REDRAW_ON, this.#follow);
    this.#svg?.remove();
    this.#svg = null;
    this.#drawn = null;
    return this;
  }

  show(draw: DrawPlate): void {
    this.#draw = draw;
    this.#redraw();
  }

  /** One move of the map comes as up to four events. */
  readonly #follow = (): void => {
    if (placeOf(this._map) !== this.#drawnAt) this.#redraw();
  };

  readonly #redraw = (): void => {
    const map = this._map;
    const svg = this.#svg;
    if (svg === null || this.#draw === null) return;
    const place = placeOf(map);
    const moved = place !== this.#drawnAt;
    this.#drawnAt = place;
    const view = plateViewOf(map, this.#frame, BEYOND);
    const { width, height } = view.box;
    if (width === 0 || height === 0) return;
    const size = map.getSize();
    const visible = { x: size.x * BEYOND, y: size.y * BEYOND, width: size.x, height: size.y };
    const drawing = this.#draw(view, visible);
    const [root] = svg.children;
    // In another place nearly every element is another: that many are sooner made than changed.
    if (!moved && root !== undefined && this.#drawn?.tag === drawing.tag) {
      patchDrawing(root, this.#drawn, drawing);
    } else {
      const corner = size.multiplyBy(-BEYOND);
      L.DomUtil.setPosition(svg as unknown as HTMLElement, map.containerPointToLayerPoint(corner)); // sets a CSS transform
      svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
      svg.setAttribute('width', String(width));
      svg.setAttribute('height', String(height));
      svg.replaceChildren(svgElement(drawing));
    }
    this.#drawn = drawing;
  };
}

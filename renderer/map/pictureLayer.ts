import * as L from 'leaflet';
import type { LocalFrame } from '../../shared/geometry/localFrame.ts';
import type { PlanePoint } from '../../shared/geometry/points.ts';
import { latLngOf } from './plateMapBase.ts';
import './pictures.css';

/** A picture laid on the plane. */
export interface LaidPicture {
  readonly id: string;
  /** Its file. */
  readonly url: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly opacity: number;
  /** Bottom left, bottom right, top right, top left. */
  readonly outline: readonly PlanePoint[];
}

const PLACED_ON = 'viewreset zoomend moveend';

/** Pictures under the drawing, each an image stretched to its corners. The browser scales and turns it; nothing is redrawn. */
export class PictureLayer extends L.Layer {
  readonly #frame: LocalFrame;
  readonly #onBroken: (id: string) => void;
  readonly #images = new Map<string, HTMLImageElement>();
  #map: L.Map | null = null;
  #shown: readonly LaidPicture[] = [];

  /** @param onBroken told of a picture that the window cannot show */
  constructor(frame: LocalFrame, onBroken: (id: string) => void) {
    super();
    this.#frame = frame;
    this.#onBroken = onBroken;
  }

  override onAdd(map: L.Map): this {
    this.#map = map;
    map.on(PLACED_ON, this.#place);
    this.show(this.#shown);
    return this;
  }

  override onRemove(map: L.Map): this {
    this.#map = null;
    map.off(PLACED_ON, this.#place);
    for (const image of this.#images.values()) image.remove();
    this.#images.clear();
    return this;
  }

  show(pictures: readonly LaidPicture[]): void {
    this.#shown = pictures;
    if (this.#map === null) return;
    const keep = new Set(pictures.map(({ id }) => id));
    for (const [id, image] of this.#images) {
      if (keep.has(id)) continue;
      image.remove();
      this.#images.delete(id);
    }
    const pane = this.getPane('pictures');
    for (const { id, url, widthPx, heightPx, opacity } of pictures) {
      const image = this.#images.get(id) ?? this.#make(id);
      if (image.getAttribute('src') !== url) image.src = url;
      image.width = widthPx;
      image.height = heightPx;
      image.style.opacity = String(opacity);
      // In the order of the list, the last on top.
      pane?.append(image);
    }
    this.#place();
  }

  #make(id: string): HTMLImageElement {
    const image = document.createElement('img');
    image.className = 'plate-picture';
    image.alt = '';
    image.draggable = false;
    image.addEventListener('error', () => this.#onBroken(id));
    this.#images.set(id, image);
    return image;
  }

  readonly #place = (): void => {
    const map = this.#map;
    if (map === null) return;
    // Not through latLngToLayerPoint, which rounds to whole pixels and would bend the picture.
    const origin = map.getPixelOrigin();
    const pixel = (at: PlanePoint): L.Point => map.project(latLngOf(this.#frame, at)).subtract(origin);
    for (const { id, outline, widthPx, heightPx } of this.#shown) {
      const image = this.#images.get(id);
      const [bottomLeft, bottomRight, , topLeft] = outline.map(pixel);
      if (
        image === undefined ||
        bottomLeft === undefined ||
        bottomRight === undefined ||
        topLeft === undefined
      )
        continue;
      const right = bottomRight.subtract(bottomLeft).divideBy(widthPx);
      const down = bottomLeft.subtract(topLeft).divideBy(heightPx);
      image.style.transform = `matrix(${[right.x, right.y, down.x, down.y, topLeft.x, topLeft.y].join(',')})`;
    }
  };
}

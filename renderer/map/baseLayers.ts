import * as L from 'leaflet';

/** Pictures of the ground under the drawing, by an address with {z}/{x}/{y}, or a WMS address with its layers. */
export interface BaseLayer {
  readonly id: string;
  readonly url: string;
  /** Layers of a WMS; empty for tiles. */
  readonly wmsLayers: string;
  readonly maxNativeZoom: number;
  readonly opacity: number;
  /** Pixels at the layer's own finest zoom would drift; the shift is told in metres and drawn at any zoom. */
  readonly eastM: number;
  readonly northM: number;
}

/** The base layers that are switched on. One that is off makes no request at all, and nothing is fetched ahead. */
export class BaseLayers {
  readonly #map: L.Map;
  readonly #onTrouble: (unreachable: boolean) => void;
  readonly #layers = new Map<string, { readonly key: string; readonly layer: L.TileLayer }>();
  #shifts: readonly BaseLayer[] = [];

  /** @param onTrouble told when no tile comes, and when one does again */
  constructor(map: L.Map, onTrouble: (unreachable: boolean) => void) {
    this.#map = map;
    this.#onTrouble = onTrouble;
    map.on('zoomend viewreset', () => this.#shift());
  }

  show(wanted: readonly BaseLayer[]): void {
    this.#shifts = wanted;
    const keep = new Set(wanted.map(({ id }) => id));
    for (const [id, { layer }] of this.#layers) {
      if (keep.has(id)) continue;
      layer.remove();
      this.#layers.delete(id);
    }
    if (wanted.length === 0) this.#onTrouble(false);
    for (const base of wanted) {
      const key = `${base.url} ${base.wmsLayers} ${String(base.maxNativeZoom)}`;
      const known = this.#layers.get(base.id);
      if (known?.key === key) {
        known.layer.setOpacity(base.opacity);
        continue;
      }
      known?.layer.remove();
      const layer = this.#make(base);
      layer.on('tileerror', () => this.#onTrouble(true));
      layer.on('tileload', () => this.#onTrouble(false));
      layer.addTo(this.#map);
      this.#layers.set(base.id, { key, layer });
    }
    this.#shift();
  }

  #make({ url, wmsLayers, maxNativeZoom, opacity }: BaseLayer): L.TileLayer {
    const options = {
      pane: 'base',
      opacity,
      maxZoom: 25,
      maxNativeZoom,
      // Only what is in view: no ring of tiles ahead, none while the map still moves.
      keepBuffer: 0,
      updateWhenIdle: true,
      updateWhenZooming: false,
      // Public tile servers ask who fetches: they learn the origin of the window and no more.
      referrerPolicy: 'strict-origin-when-cross-origin' as const,
    };
    if (wmsLayers === '') return L.tileLayer(url, options);
    return L.tileLayer.wms(url, {
      ...options,
      layers: wmsLayers,
      format: 'image/png',
      transparent: true,
      version: '1.3.0',
    });
  }

  /** Moves each layer by its own shift, at the scale of the moment. */
  #shift(): void {
    for (const { id, eastM, northM } of this.#shifts) {
      const container = this.#layers.get(id)?.layer.getContainer();
      if (container === null || container === undefined) continue;
      const { lat, lng } = this.#map.getCenter();
      const perM = 1 / 111_320;
      const here = this.#map.project(L.latLng(lat, lng));
      const there = this.#map.project(
        L.latLng(lat + northM * perM, lng + (eastM * perM) / Math.cos((lat * Math.PI) / 180)),
      );
      container.style.translate = `${(there.x - here.x).toFixed(1)}px ${(there.y - here.y).toFixed(1)}px`;
    }
  }
}

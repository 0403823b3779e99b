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
  readonly #onTrouble: (unreachable: readonly string[]) => void;
  readonly #layers = new Map<string, { readonly key: string; readonly layer: L.TileLayer }>();
  #shifts: readonly BaseLayer[] = [];
  #silent: readonly string[] = [];

  /** @param onTrouble told which layers are on and send nothing at all, whenever that changes */
  constructor(map: L.Map, onTrouble: (unreachable: readonly string[]) => void) {
    this.#map = map;
    this.#onTrouble = onTrouble;
    map.on('zoomend viewreset', () => this.#shift());
  }

  show(wanted: readonly BaseLayer[]): void {
    const shiftedBefore = new Map(this.#shifts.map((base) => [base.id, base]));
    this.#shifts = wanted;
    const keep = new Set(wanted.map(({ id }) => id));
    for (const [id, { layer }] of this.#layers) {
      if (keep.has(id)) continue;
      layer.remove();
      this.#layers.delete(id);
      this.#hear(id, false);
    }
    let shifted = false;
    for (const base of wanted) {
      const key = `${base.url} ${base.wmsLayers} ${String(base.maxNativeZoom)}`;
      const known = this.#layers.get(base.id);
      if (known?.key === key) {
        known.layer.setOpacity(base.opacity);
        const before = shiftedBefore.get(base.id);
        shifted ||= before?.eastM !== base.eastM || before.northM !== base.northM;
        continue;
      }
      known?.layer.remove();
      const layer = this.#make(base);
      this.#listen(base.id, layer);
      this.#layers.set(base.id, { key, layer });
      layer.addTo(this.#map);
    }
    this.#shift();
    // Another part of the source comes into view, which is asked for as if the map had moved.
    if (shifted) this.#map.fire('moveend');
  }

  #make({ id, url, wmsLayers, maxNativeZoom, opacity }: BaseLayer): L.TileLayer {
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
    if (wmsLayers === '') return this.#shifted(id, L.tileLayer(url, options));
    const wms = L.tileLayer.wms(url, {
      ...options,
      layers: wmsLayers,
      format: 'image/png',
      transparent: true,
      version: '1.3.0',
    });
    return this.#shifted(id, wms);
  }

  /** Asks for the tiles that come into view once the layer is moved by its shift, not for those that move out of it. */
  #shifted(id: string, layer: L.TileLayer): L.TileLayer {
    const tiled = layer as unknown as TiledBounds; // left out of Leaflet's types
    const unshifted = tiled._getTiledPixelBounds.bind(layer);
    tiled._getTiledPixelBounds = (centre) => {
      const base = this.#shifts.find((one) => one.id === id);
      return unshifted(base === undefined ? centre : moved(centre, -base.eastM, -base.northM));
    };
    return layer;
  }

  /** A layer is silent when everything it was asked for has failed. Single tiles beyond the edge of a source do. */
  #listen(id: string, layer: L.TileLayer): void {
    let failed = false;
    layer.on('tileerror', () => {
      failed = true;
    });
    layer.on('tileload', () => {
      failed = false;
      this.#hear(id, false);
    });
    layer.on('load', () => {
      if (failed) this.#hear(id, true);
      failed = false;
    });
  }

  #hear(id: string, silent: boolean): void {
    if (this.#silent.includes(id) === silent) return;
    this.#silent = silent ? [...this.#silent, id] : this.#silent.filter((other) => other !== id);
    this.#onTrouble(this.#silent);
  }

  /** Moves each layer by its own shift, at the scale of the moment. */
  #shift(): void {
    for (const { id, eastM, northM } of this.#shifts) {
      const container = this.#layers.get(id)?.layer.getContainer();
      if (container === null || container === undefined) continue;
      const centre = this.#map.getCenter();
      const here = this.#map.project(centre);
      const there = this.#map.project(moved(centre, eastM, northM));
      container.style.translate = `${(there.x - here.x).toFixed(1)}px ${(there.y - here.y).toFixed(1)}px`;
    }
  }
}

interface TiledBounds {
  _getTiledPixelBounds(centre: L.LatLng): L.Bounds;
}

/** So many metres on, near enough for a shift of some of them. */
function moved({ lat, lng }: L.LatLng, eastM: number, northM: number): L.LatLng {
  const perM = 1 / 111_320;
  return L.latLng(lat + northM * perM, lng + (eastM * perM) / Math.cos((lat * Math.PI) / 180));
}

/** A source of pictures of the ground, as a person sets it up. */
export interface BaseLayerSetting {
  readonly id: string;
  readonly name: string;
  /** {z}, {x} and {y} for tiles; the plain address of a WMS where `wmsLayers` names its layers. */
  readonly url: string;
  readonly wmsLayers: string;
  /** As its owner asks to be named: shown on the plate while the layer is on. */
  readonly attribution: string;
  readonly maxNativeZoom: number;
  readonly opacity: number;
  readonly eastM: number;
  readonly northM: number;
  readonly on: boolean;
}

/** Ready to switch on; its policy asks for the attribution, real requests only, and nothing fetched ahead. */
export const openStreetMap: BaseLayerSetting = {
  id: 'openstreetmap',
  name: 'OpenStreetMap, standard map',
  url: 'https://tile.openstreetmap.org/{z}/{x}/{y}.png',
  wmsLayers: '',
  attribution: '© OpenStreetMap contributors',
  maxNativeZoom: 19,
  opacity: 1,
  eastM: 0,
  northM: 0,
  on: false,
};

/** Whether an address can serve pictures here: https, or this machine itself. */
export function isLayerAddress(url: string, isWms: boolean): boolean {
  const plain = url.replace(/\{[a-z]\}/g, '0');
  if (!URL.canParse(plain)) return false;
  const { protocol, hostname } = new URL(plain);
  const ownMachine = protocol === 'http:' && (hostname === '127.0.0.1' || hostname === 'localhost');
  return (
    (protocol === 'https:' || ownMachine) &&
    (isWms || ['{z}', '{x}', '{y}'].every((part) => url.includes(part)))
  );
}

/** Settings as kept by any earlier version: what does not fit is left out; the ready layer is always there. */
export function baseLayersFrom(kept: unknown): readonly BaseLayerSetting[] {
  const list = Array.isArray(kept) ? kept.flatMap(settingFrom) : [];
  return list.some(({ id }) => id === openStreetMap.id) ? list : [openStreetMap, ...list];
}

function settingFrom(kept: unknown): readonly BaseLayerSetting[] {
  if (typeof kept !== 'object' || kept === null) return [];
  const value: Partial<Record<keyof BaseLayerSetting, unknown>> = kept;
  const { id, name, url, wmsLayers, attribution } = value;
  if (
    typeof id !== 'string' ||
    typeof name !== 'string' ||
    typeof url !== 'string' ||
    typeof wmsLayers !== 'string' ||
    typeof attribution !== 'string' ||
    !isLayerAddress(url, wmsLayers !== '')
  )
    return [];
  const number = (member: unknown, low: number, high: number, usual: number): number =>
    typeof member === 'number' && member >= low && member <= high ? member : usual;
  return [
    {
      id,
      name,
      url,
      wmsLayers,
      attribution,
      maxNativeZoom: number(value.maxNativeZoom, 1, 25, 19),
      opacity: number(value.opacity, 0, 1, 1),
      eastM: number(value.eastM, -500, 500, 0),
      northM: number(value.northM, -500, 500, 0),
      on: value.on === true,
    },
  ];
}

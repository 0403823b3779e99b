import { atlasDocument } from '../../../shared/atlas/document.ts';
import type { AtlasDocument, AtlasRecord } from '../../../shared/atlas/records.ts';
import { localFrame } from '../../../shared/geometry/localFrame.ts';
import { lonLat, type LonLat, planePoint } from '../../../shared/geometry/points.ts';

/** Ground in the sea off a coast, in UTM zone 30 north. */
export const anchor = lonLat(-3.6, 53.9);
export const frame = localFrame(anchor);
export const at = (eastM: number, northM: number): LonLat => frame.toLonLat(planePoint(eastM, northM));
export const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Rolling ground of a few percent, over metres of the plane. */
export const ground = (eastM: number, northM: number): number =>
  20 + 0.02 * eastM - 0.01 * northM + 0.3 * Math.sin(eastM / 9) * Math.cos(northM / 11);

const circle = (radiusM: number): LonLat[] =>
  Array.from({ length: 24 }, (_, i) =>
    at(radiusM * Math.cos((i * Math.PI) / 12), radiusM * Math.sin((i * Math.PI) / 12)),
  );

/** One hole with a round green at the anchor, placed on the earth. */
export function placedAtlas(extra: readonly AtlasRecord[] = []): AtlasDocument {
  return atlasDocument([
    { type: 'atlas', id: 'atlas', name: 'Seaward', kind: 'course', placed: true, anchor, note: '' },
    { type: 'hole', id: 'h4', label: '4', order: 4, name: '', par: 3, greenId: 'green', line: null },
    {
      type: 'area',
      id: 'green',
      kind: 'green',
      name: 'Fourth',
      rings: [circle(12)],
      lipHeightM: null,
      treeHeightM: null,
      canopyBaseM: null,
    },
    ...extra,
  ]);
}

export const emptyAtlas = (): AtlasDocument =>
  atlasDocument([
    {
      type: 'atlas',
      id: 'atlas',
      name: 'New',
      kind: 'course',
      placed: false,
      anchor: lonLat(-30, 45),
      note: '',
    },
  ]);

/** A small golf map in OpenStreetMap XML: a multipolygon fairway with an island, a bunker, a hole, a pin, a pond, a path. */
export function osmXml(): string {
  const nodes: string[] = [];
  const ways: string[] = [];
  let next = 1;
  const node = (east: number, north: number, tags = ''): number => {
    const [lon, lat] = at(east, north);
    nodes.push(`<node id="${next}" lat="${lat}" lon="${lon}">${tags}</node>`);
    return next++;
  };
  const way = (id: number, refs: readonly number[], tags: Readonly<Record<string, string>>): void => {
    ways.push(`<way id="${id}">${refs.map((ref) => `<nd ref="${ref}"/>`).join('')}${tagText(tags)}</way>`);
  };
  const ring = (east: number, north: number, half: number): number[] => {
    const refs = [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ].map(([x = 0, y = 0]) => node(east + x * half, north + y * half));
    return [...refs, refs[0] ?? 0];
  };
  const outer = ring(0, -60, 20);
  way(101, outer.slice(0, 3), {});
  way(102, outer.slice(2), {});
  way(103, ring(0, -60, 4), {});
  way(104, ring(0, 0, 9), { golf: 'green' });
  way(105, ring(16, 0, 3), { golf: 'bunker' });
  way(106, ring(-30, 0, 6), { golf: 'lateral_water_hazard', natural: 'water' });
  way(107, [node(0, -150), node(0, -40), node(0, 0)], {
    golf: 'hole',
    ref: '7',
    par: '4',
    name: 'Out & back',
  });
  way(108, [node(30, -20), node(30, 20)], { golf: 'cartpath', highway: 'path' });
  way(109, ring(80, 80, 8), { building: 'yes', golf: 'clubhouse' });
  node(1, 1, '<tag k="golf" v="pin"/>');
  node(-20, 12, '<tag k="natural" v="tree"/><tag k="height" v="9"/>');
  const relation =
    '<relation id="201"><member type="way" ref="101" role="outer"/><member type="way" ref="102" role="outer"/>' +
    `<member type="way" ref="103" role="inner"/>${tagText({ type: 'multipolygon', golf: 'fairway' })}</relation>`;
  return `<?xml version="1.0"?>\n<osm version="0.6">\n${[...nodes, ...ways, relation].join('\n')}\n</osm>\n`;
}

const tagText = (tags: Readonly<Record<string, string>>): string =>
  Object.entries(tags)
    .map(([k, v]) => `<tag k="${k}" v="${v.replaceAll('&', '&amp;')}"/>`)
    .join('');

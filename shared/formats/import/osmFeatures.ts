import { planePoint, type LonLat } from '../../geometry/points.ts';
import { pointInRing } from '../../geometry/ring.ts';
import { leftOutList } from './leftOutList.ts';
import type { MapContent, MapFeature, MapGeometry } from './mapFeature.ts';
import type { OsmElements, OsmTags } from './osmElements.ts';
import { joinedRings } from './osmRings.ts';

/** Tags that are of interest to an atlas; everything else in the data is passed over and counted. */
const telling = ['golf', 'natural', 'leisure', 'barrier', 'waterway'];

/** OpenStreetMap's nodes, ways and relations as features with geometry. */
export function osmContent(format: string, elements: OsmElements): MapContent {
  const { nodes, ways, relations } = elements;
  const leftOut = leftOutList();
  const features: MapFeature[] = [];
  const positionsOf = (id: string): readonly LonLat[] | null => {
    const way = ways.get(id);
    if (way === undefined) return null;
    const found = way.positions ?? way.nodes.map((node) => nodes.get(node)?.at ?? null);
    const known = found.filter((at) => at !== null);
    return known.length === found.length && known.length > 1 ? known : null;
  };
  const put = (id: string, place: string, tags: OsmTags, geometry: MapGeometry): void =>
    void features.push({ id, place, name: tags.get('name') ?? '', tags, geometry });
  const usedAsOutline = new Set<string>();

  for (const relation of relations) {
    const place = `relation ${relation.id}`;
    if (!isTelling(relation.tags)) continue;
    if (!/^(multipolygon|boundary)$/.test(relation.tags.get('type') ?? '')) {
      leftOut.add('relations that are no outlines', 'Only multipolygons have a shape.', place);
      continue;
    }
    const parts = (inner: boolean): readonly (readonly LonLat[] | null)[] =>
      relation.members.filter(({ role }) => (role === 'inner') === inner).map(({ way }) => positionsOf(way));
    const [outer, inner] = [parts(false), parts(true)];
    const whole = (list: readonly (readonly LonLat[] | null)[]) => list.filter((part) => part !== null);
    const outers = joinedRings(whole(outer));
    const inners = joinedRings(whole(inner));
    if (outers.open || outers.rings.length === 0 || outer.includes(null)) {
      leftOut.add('multipolygons that are not whole', 'Ways of their outline are not in the file.', place);
      continue;
    }
    for (const { way } of relation.members) usedAsOutline.add(way);
    put(`r${relation.id}`, place, relation.tags, {
      kind: 'areas',
      polygons: outers.rings.map((ring) => [ring, ...inners.rings.filter((hole) => lies(hole, ring))]),
    });
  }
  for (const [id, way] of ways) {
    // The outline of a multipolygon often repeats its tags.
    if (!isTelling(way.tags) || usedAsOutline.has(id)) continue;
    const place = `way ${id}`;
    const positions = positionsOf(id);
    if (positions === null) {
      leftOut.add('ways that are not whole', 'Some of their nodes are not in the file.', place);
      continue;
    }
    const [first, last] = [positions[0], positions.at(-1)];
    const closed = positions.length >= 4 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
    const asLine =
      /^(hole|path|cartpath)$/.test(way.tags.get('golf') ?? '') && way.tags.get('area') !== 'yes';
    put(
      `w${id}`,
      place,
      way.tags,
      closed && !asLine
        ? { kind: 'areas', polygons: [[positions.slice(0, -1)]] }
        : { kind: 'line', positions },
    );
  }
  for (const [id, node] of nodes)
    if (isTelling(node.tags))
      put(`n${id}`, `node ${id}`, node.tags, { kind: 'point', at: node.at, elevationM: null });
  return {
    format,
    features,
    leftOut: leftOut.list(),
    warnings: [],
    attribution: elements.attribution,
    licence: elements.licence,
    idPrefix: 'osm',
    walked: false,
  };
}

const isTelling = (tags: OsmTags): boolean => telling.some((key) => tags.has(key)) || tags.has('golf_cart');

/** Whether a ring lies in another, judged by its first corner: rings of one multipolygon do not cross. */
function lies(hole: readonly LonLat[], ring: readonly LonLat[]): boolean {
  const flat = (at: LonLat) => planePoint(at[0], at[1]);
  const [corner] = hole;
  return corner !== undefined && pointInRing(flat(corner), ring.map(flat));
}

import { lonLat } from '../../geometry/points.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { childrenNamed, readXml, type XmlElement } from '../xml/readXml.ts';
import { MOST_POSITIONS, textOf, tooMany } from './limits.ts';
import type { MapContent } from './mapFeature.ts';
import { OSM_ATTRIBUTION, OSM_LICENCE, type OsmNode, type OsmTags, type OsmWay } from './osmElements.ts';
import { osmContent } from './osmFeatures.ts';

/** OpenStreetMap's XML, as its editors and its interface give it. Throws InputProblem. */
export function readOsmXml(content: Uint8Array, fileName: string): MapContent {
  const root = readXml(textOf(content, fileName), fileName);
  if (root.name !== 'osm')
    throw new InputProblem(
      'foreign-file',
      'this XML is not OpenStreetMap data.',
      fileName,
      'Choose another file.',
    );
  const present = (name: string): readonly XmlElement[] =>
    childrenNamed(root, name).filter(
      ({ attributes }) => attributes['action'] !== 'delete' && attributes['visible'] !== 'false',
    );
  const found = present('node');
  if (found.length > MOST_POSITIONS) throw tooMany('nodes', MOST_POSITIONS, fileName);
  const nodes = new Map<string, OsmNode>();
  for (const node of found) {
    const [lon, lat] = [Number(node.attributes['lon'] ?? NaN), Number(node.attributes['lat'] ?? NaN)];
    if (!Number.isFinite(lon) || !Number.isFinite(lat))
      throw new InputProblem(
        'bad-position',
        `node ${node.attributes['id'] ?? '?'} has no longitude and latitude.`,
        `${fileName}, line ${String(node.line)}`,
        'Download the data again.',
      );
    nodes.set(node.attributes['id'] ?? '', { at: lonLat(lon, lat), tags: tagsOf(node) });
  }
  const ways = new Map<string, OsmWay>(
    present('way').map((way) => [
      way.attributes['id'] ?? '',
      {
        nodes: childrenNamed(way, 'nd').map(({ attributes }) => attributes['ref'] ?? ''),
        positions: null,
        tags: tagsOf(way),
      },
    ]),
  );
  const relations = present('relation').map((relation) => ({
    id: relation.attributes['id'] ?? '',
    tags: tagsOf(relation),
    members: childrenNamed(relation, 'member').flatMap(({ attributes }) =>
      attributes['type'] === 'way' ? [{ way: attributes['ref'] ?? '', role: attributes['role'] ?? '' }] : [],
    ),
  }));
  return osmContent('OpenStreetMap XML', {
    nodes,
    ways,
    relations,
    attribution: OSM_ATTRIBUTION,
    licence: OSM_LICENCE,
  });
}

const tagsOf = (element: XmlElement): OsmTags =>
  new Map(
    childrenNamed(element, 'tag').map(({ attributes }) => [attributes['k'] ?? '', attributes['v'] ?? '']),
  );

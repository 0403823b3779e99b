import * as z from 'zod';
import { lonLat, type LonLat } from '../../geometry/points.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { parseJson } from '../jsonText.ts';
import { MOST_POSITIONS, textOf, tooMany } from './limits.ts';
import type { MapContent } from './mapFeature.ts';
import { OSM_ATTRIBUTION, OSM_LICENCE, type OsmNode, type OsmRelation, type OsmWay } from './osmElements.ts';
import { osmContent } from './osmFeatures.ts';

z.config({ jitless: true });

const tags = z.record(z.string(), z.string()).optional();
const point = z.object({ lon: z.number(), lat: z.number() });
const elementId = z.union([z.number(), z.string()]).transform(String);
const element = z.discriminatedUnion('type', [
  z.object({ type: z.literal('node'), id: elementId, lon: z.number(), lat: z.number(), tags }),
  z.object({
    type: z.literal('way'),
    id: elementId,
    nodes: z.array(elementId).optional(),
    geometry: z.array(point.nullable()).optional(),
    tags,
  }),
  z.object({
    type: z.literal('relation'),
    id: elementId,
    members: z
      .array(
        z.object({
          type: z.string(),
          ref: elementId,
          role: z.string().optional(),
          geometry: z.array(point.nullable()).optional(),
        }),
      )
      .optional(),
    tags,
  }),
]);

/** The JSON of an Overpass query, with nodes beside the ways or (`out geom`) positions inside them. Throws InputProblem. */
export function readOverpassJson(content: Uint8Array, fileName: string): MapContent {
  const root = parseJson(textOf(content, fileName), fileName);
  const elements =
    typeof root === 'object' && root !== null ? (root as Record<string, unknown>)['elements'] : null;
  if (!Array.isArray(elements))
    throw new InputProblem(
      'foreign-file',
      'this JSON has no list of elements.',
      fileName,
      'Choose another file.',
    );
  if (elements.length > MOST_POSITIONS) throw tooMany('elements', MOST_POSITIONS, fileName);
  const nodes = new Map<string, OsmNode>();
  const ways = new Map<string, OsmWay>();
  const relations: OsmRelation[] = [];
  const positionsOf = (
    geometry: readonly (z.infer<typeof point> | null)[] | undefined,
  ): (LonLat | null)[] | null => geometry?.map((at) => (at === null ? null : lonLat(at.lon, at.lat))) ?? null;
  elements.forEach((raw: unknown, i) => {
    const parsed = element.safeParse(raw);
    if (!parsed.success)
      throw new InputProblem(
        'bad-element',
        'it is no node, way or relation as Overpass writes them.',
        `${fileName}, element ${String(i + 1)}`,
        'Ask for the data again with “out body; >; out skel qt;” or “out geom;”.',
      );
    const found = parsed.data;
    const tagged = new Map(Object.entries(found.tags ?? {}));
    if (found.type === 'node') {
      // A node is often given twice, the second time bare.
      const earlier = nodes.get(found.id);
      nodes.set(found.id, {
        at: lonLat(found.lon, found.lat),
        tags: earlier?.tags.size ? earlier.tags : tagged,
      });
    } else if (found.type === 'way') {
      const earlier = ways.get(found.id);
      ways.set(found.id, {
        nodes: found.nodes ?? earlier?.nodes ?? [],
        positions: positionsOf(found.geometry) ?? earlier?.positions ?? null,
        tags: earlier !== undefined && earlier.tags.size > 0 ? earlier.tags : tagged,
      });
    } else {
      for (const member of found.members ?? [])
        if (member.type === 'way' && member.geometry !== undefined && !ways.has(member.ref))
          ways.set(member.ref, { nodes: [], positions: positionsOf(member.geometry), tags: new Map() });
      relations.push({
        id: found.id,
        tags: tagged,
        members: (found.members ?? []).flatMap(({ type, ref, role }) =>
          type === 'way' ? [{ way: ref, role: role ?? '' }] : [],
        ),
      });
    }
  });
  return osmContent('Overpass JSON', {
    nodes,
    ways,
    relations,
    attribution: OSM_ATTRIBUTION,
    licence: OSM_LICENCE,
  });
}

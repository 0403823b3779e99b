import { type LonLat } from '../../geometry/points.ts';

/** What both spellings of OpenStreetMap data hold. */
export interface OsmElements {
  readonly nodes: ReadonlyMap<string, OsmNode>;
  readonly ways: ReadonlyMap<string, OsmWay>;
  readonly relations: readonly OsmRelation[];
  readonly attribution: string;
  readonly licence: string;
}

export type OsmTags = ReadonlyMap<string, string>;

export interface OsmNode {
  readonly at: LonLat;
  readonly tags: OsmTags;
}

export interface OsmWay {
  /** Ids of its nodes; positions of those that the data leaves out are in `positions`. */
  readonly nodes: readonly string[];
  readonly positions: readonly (LonLat | null)[] | null;
  readonly tags: OsmTags;
}

export interface OsmRelation {
  readonly id: string;
  readonly tags: OsmTags;
  readonly members: readonly { readonly way: string; readonly role: string }[];
}

/** OpenStreetMap's own terms, which hold for all of its data. */
export const OSM_ATTRIBUTION = '© OpenStreetMap contributors';
export const OSM_LICENCE = 'Open Database License (ODbL) 1.0, https://www.openstreetmap.org/copyright';

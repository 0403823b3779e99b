import type { LonLat } from '../../geometry/points.ts';
import type { ImportWarning, LeftOut } from './importPreview.ts';

/** A thing on the map as any of the formats gives it, before it is known what it is to an atlas. */
export interface MapFeature {
  /** Stable within the file: `w123`, `f4`. */
  readonly id: string;
  /** For people: "way 123", "feature 4 “Left bunker”". */
  readonly place: string;
  readonly name: string;
  readonly tags: ReadonlyMap<string, string>;
  readonly geometry: MapGeometry;
}

export type MapGeometry =
  | { readonly kind: 'areas'; readonly polygons: readonly (readonly (readonly LonLat[])[])[] }
  | { readonly kind: 'line'; readonly positions: readonly LonLat[] }
  | { readonly kind: 'point'; readonly at: LonLat; readonly elevationM: number | null };

export interface MapContent {
  readonly format: string;
  readonly features: readonly MapFeature[];
  readonly leftOut: readonly LeftOut[];
  readonly warnings: readonly ImportWarning[];
  readonly attribution: string;
  readonly licence: string;
  /** Ids of features outlive this one file, as those of OpenStreetMap do: the prefix that keeps them apart from others. */
  readonly idPrefix: string | null;
  /** Outlines were walked with a receiver: ends need not meet, and wobbles are smoothed away. */
  readonly walked: boolean;
}

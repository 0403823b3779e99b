/**
 * The atlas file: one GeoJSON FeatureCollection (RFC 7946, WGS 84) that any map program opens.
 *
 * - Areas, lines, spot heights, slope readings, hole locations and ball positions are features. Their properties are
 *   plain and flat; the property `swale` names the record type. Members that are null are left out.
 * - What has no place on the map (the atlas's name and anchor, holes, conditions, players, choices) stands in the
 *   foreign member `swale` beside `features`, with the format's number.
 * - Rings are closed and wind as RFC 7946 says; positions have at most nine decimals (0.1 mm); records are ordered by
 *   type and id, one position a line, so that a small change to the ground is a small change to the file.
 * - Anything unknown is refused with its place, never dropped: an atlas has nowhere to keep another program's members,
 *   and saving must not lose them silently. `bbox` alone is passed over, since it follows from the rest.
 */
export { readAtlasFile, type ReadOptions } from './readAtlasFile.ts';
export { writeAtlasFile } from './writeAtlasFile.ts';

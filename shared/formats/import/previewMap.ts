import type { AreaRecord, AtlasDocument, AtlasRecord } from '../../atlas/records.ts';
import { pointAlong } from '../../geometry/bearing.ts';
import type { LocalFrame } from '../../geometry/localFrame.ts';
import type { LonLat, PlanePoint, PlanePolygon } from '../../geometry/points.ts';
import type { AreaKind } from '../../words/vocabulary.ts';
import { cleanOutline, meetsItself } from './cleanOutline.ts';
import { type GroupEntry, grouped } from './groupRecords.ts';
import { holesAndPoints, type LaterThing, shortName } from './holesAndPoints.ts';
import { importPlace, isNear } from './importPlace.ts';
import type { ImportOptions, ImportPreview, ImportWarning } from './importPreview.ts';
import { leftOutList } from './leftOutList.ts';
import { MOST_FEATURES, MOST_IN_OUTLINE, tooMany } from './limits.ts';
import { lineCorridor } from './lineCorridor.ts';
import type { MapContent, MapFeature } from './mapFeature.ts';
import { meaningOf } from './meaning.ts';

const PATH_WIDTH_M = 2;
const CROWN_M = 6;
/** One standard deviation of a height that comes without an accuracy: a satellite receiver that averages, or a level. */
const HEIGHT_ACCURACY_M = 0.03;
const UNKNOWN_HOW =
  'Outlines that say nothing of their kind come in as light rough, which changes nothing until their kind is chosen.';

/** What a map file would bring: outlines, holes, lines and points as records, and what is left out and why. */
export function previewMap(
  document: AtlasDocument,
  fileName: string,
  hash: string,
  content: MapContent,
  options: ImportOptions,
): ImportPreview {
  if (content.features.length > MOST_FEATURES) throw tooMany('features', MOST_FEATURES, fileName);
  const { frame, header } = importPlace(
    document,
    content.features.map(firstPosition).filter(isThere),
    fileName,
  );
  const prefix = content.idPrefix ?? `f${hash}`;
  const leftOut = leftOutList();
  const warnings: ImportWarning[] = [...content.warnings];
  const entries: GroupEntry[] = [];
  const later: LaterThing[] = [];
  let mended = 0;
  let heights = 0;
  let known = 0;
  const add = (
    id: string,
    make: (id: string) => AtlasRecord,
    how: string,
    more: Pick<GroupEntry, 'from' | 'unknown'> = {},
  ): void => {
    const fullId = `${prefix}-${id}`;
    if (document.records.has(fullId)) known += 1;
    else entries.push({ record: make(fullId), how, ...more });
  };
  const addArea = (
    feature: MapFeature,
    kind: AreaKind,
    how: string,
    polygons: readonly PlanePolygon[],
    more: Pick<GroupEntry, 'from' | 'unknown'> = {},
  ): void =>
    polygons.forEach((polygon, p) => {
      const rings: (readonly PlanePoint[])[] = [];
      for (const [r, ring] of polygon.entries()) {
        const clean = cleanOutline(ring, content.walked && feature.geometry.kind === 'line');
        if (clean.ring !== null) {
          rings.push(clean.ring);
          mended += clean.mended ? 1 : 0;
        } else if (r === 0) {
          leftOut.add('outlines that cannot be used', clean.why, feature.place);
          return;
        }
      }
      const id = `${feature.id}${p === 0 ? '' : `.${String(p + 1)}`}`;
      add(id, (fullId) => area(fullId, kind, feature, rings, frame), how, more);
    });
  const flat = (positions: readonly LonLat[]): PlanePoint[] => positions.map(frame.toPlane);

  for (const feature of content.features) {
    const { geometry, place } = feature;
    if (!positionsOf(feature).every((at) => isNear(frame, at))) {
      leftOut.add('things far away', 'They lie more than 50 km from the atlas.', place);
      continue;
    }
    const meaning = meaningOf(feature);
    const unknownKind = options.unknownAreaKind ?? 'lightRough';
    if (geometry.kind === 'point' && geometry.elevationM !== null && meaning.as !== 'height') heights += 1;
    switch (meaning.as) {
      case 'leftOut':
        leftOut.add(meaning.what, meaning.why, place);
        break;
      case 'area':
      case 'unknownArea': {
        const unknown = meaning.as === 'unknownArea';
        const kind = unknown ? unknownKind : meaning.kind;
        const how = unknown ? UNKNOWN_HOW : meaning.how;
        const more = unknown ? { unknown } : { from: meaning.from };
        if (geometry.kind === 'areas')
          addArea(
            feature,
            kind,
            how,
            geometry.polygons.map((rings) => rings.map(flat)),
            more,
          );
        else if (geometry.kind === 'line') {
          const line = flat(geometry.positions);
          if (meetsItself(line)) addArea(feature, kind, how, [[line]], more);
          else leftOut.add('open lines', 'Its ends do not meet, so it encloses no ground.', place);
        }
        break;
      }
      case 'path':
        if (geometry.kind === 'line') {
          const width = Number.parseFloat(feature.tags.get('width') ?? '');
          const corridor = lineCorridor(
            flat(geometry.positions),
            width > 0.3 && width < 20 ? width : PATH_WIDTH_M,
          );
          addArea(
            feature,
            'path',
            'Lines of paths are given their width, 2 m where the map says none.',
            corridor,
            { from: 'lines of paths' },
          );
        }
        break;
      case 'tree':
        if (geometry.kind === 'point') {
          const crown = Number.parseFloat(feature.tags.get('diameter_crown') ?? '');
          const radius = (crown > 0.5 && crown < 40 ? crown : CROWN_M) / 2;
          const middle = frame.toPlane(geometry.at);
          const ring = Array.from({ length: 16 }, (_, i) => pointAlong(middle, -22.5 * i, radius));
          addArea(
            feature,
            'tree',
            'Single trees get a round crown, 6 m across where the map says none.',
            [[ring]],
            { from: 'single trees' },
          );
        }
        break;
      case 'line':
        if (geometry.kind === 'line' && geometry.positions.length <= MOST_IN_OUTLINE) {
          const { kind } = meaning;
          const height = Number.parseFloat(feature.tags.get('height_m') ?? feature.tags.get('height') ?? '');
          if (kind === 'contour' && !Number.isFinite(height))
            leftOut.add('contours without a height', 'A contour says nothing without its height.', place);
          else
            add(
              feature.id,
              (id) => ({
                type: 'line',
                id,
                kind,
                name: shortName(feature.name),
                positions: geometry.positions,
                heightM: Number.isFinite(height) && kind !== 'tierEdge' && kind !== 'ridge' ? height : null,
              }),
              'Lines named or tagged as tier edges, ridges, contours or walls.',
            );
        } else leftOut.add('long lines', 'They have too many positions.', place);
        break;
      case 'height':
        if (geometry.kind === 'point')
          add(
            feature.id,
            (id) => ({
              type: 'spotHeight',
              id,
              at: geometry.at,
              heightM: meaning.heightM,
              accuracyM: options.accuracyM ?? meaning.accuracyM ?? HEIGHT_ACCURACY_M,
            }),
            'Points with a height_m.',
          );
        break;
      default:
        // Holes, flags and balls need the greens first.
        later.push({ feature, meaning });
    }
  }

  const placed = holesAndPoints(document, frame, later, { prefix, entries, leftOut, holeId: options.holeId });
  entries.push(...placed.entries);
  known += placed.known;

  if (known > 0)
    warnings.push({
      code: 'already-imported',
      text: `${String(known)} things of this file are in the atlas already, and stay as they are there.`,
    });
  if (mended > 0)
    warnings.push({
      code: 'mended-outline',
      text: `Small loops were cut off ${String(mended)} outlines that crossed themselves.`,
    });
  if (heights > 0)
    warnings.push({
      code: 'receiver-heights',
      text: `${heights === 1 ? 'The height of 1 point is' : `The heights of ${String(heights)} points are`} left out: those of a satellite receiver or a globe are metres out.`,
    });
  return {
    fileName,
    format: content.format,
    groups: grouped(entries),
    leftOut: [...content.leftOut, ...leftOut.list()],
    warnings,
    source: {
      type: 'source',
      id: `source-${hash}`,
      name: shortName(fileName),
      attribution: content.attribution.slice(0, 1000),
      licence: content.licence.slice(0, 1000),
    },
    header,
  };
}

function area(
  id: string,
  kind: AreaKind,
  feature: MapFeature,
  rings: readonly (readonly PlanePoint[])[],
  frame: LocalFrame,
): AreaRecord {
  const height = Number.parseFloat(feature.tags.get('height') ?? '');
  const lip = Number.parseFloat(feature.tags.get('lip_height_m') ?? '');
  return {
    type: 'area',
    id,
    kind,
    name: shortName(feature.name),
    rings: rings.map((ring) => ring.map(frame.toLonLat)),
    lipHeightM: kind === 'bunker' && lip >= 0 && lip <= 20 ? lip : null,
    treeHeightM: kind === 'tree' && height > 0 && height <= 130 ? height : null,
    canopyBaseM: null,
  };
}

function positionsOf({ geometry }: MapFeature): readonly LonLat[] {
  if (geometry.kind === 'point') return [geometry.at];
  return geometry.kind === 'line' ? geometry.positions : geometry.polygons.flat(2);
}

const firstPosition = (feature: MapFeature): LonLat | undefined => positionsOf(feature)[0];
const isThere = <T>(value: T | undefined): value is T => value !== undefined;

import { frameOf, headerOf, recordsOf } from '../../shared/atlas/document.ts';
import type { AreaRecord, AtlasDocument, AtlasRecord } from '../../shared/atlas/records.ts';
import { asChosen, isWithout } from '../../shared/formats/import/applyImport.ts';
import type { ImportPreview, ImportSelection } from '../../shared/formats/import/importPreview.ts';
import { type LocalFrame, localFrame } from '../../shared/geometry/localFrame.ts';
import type { LonLat, PlanePoint } from '../../shared/geometry/points.ts';
import { element, group } from '../../shared/plate/element.ts';
import { drawGround } from '../../shared/plate/ground.ts';
import { ballMark, flagMark } from '../../shared/plate/marks.ts';
import { closedPath, openPath } from '../../shared/plate/pathData.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { fitView, projection, type XY } from '../../shared/plate/view.ts';
import { feetFromMetres } from '../../shared/units/conversions.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** With more areas than this the patterns would take longer than a person waits, and could not be told apart anyway. */
const MOST_PATTERNED = 150;
const FOOT = 26;

/** What comes in over what is there: black on the ground, blue what the hand holds, dashed what is left out. */
export function importPicture(
  document: AtlasDocument,
  preview: ImportPreview,
  selection: ImportSelection,
  { width, height }: PictureSize,
  units: UnitsPreference,
): SvgNode {
  const placed = preview.header !== null || headerOf(document).placed;
  const frame = preview.header === null ? frameOf(document) : localFrame(preview.header.anchor);
  const coming: AtlasRecord[] = [];
  const staying: AtlasRecord[] = [];
  for (const one of preview.groups)
    (isWithout(one.key, selection) ? staying : coming).push(...asChosen(document, one, selection));
  const shown = [...coming, ...staying].flatMap((record) => positionsOf(record).map(frame.toPlane));
  const box = { x: 0, y: 0, width, height: height - FOOT };
  const style = screenStyle('import', 0.62);
  const view = fitView(withoutStrays(shown), box, { marginUnits: 28, maxUnitsPerM: 9 });
  const { toDrawing } = projection(view);
  const xy = (at: LonLat): XY => toDrawing(frame.toPlane(at));

  const there = preview.header === null ? recordsOf(document, 'area') : [];
  const fresh = coming.filter((record) => record.type === 'area');
  const few = there.length + fresh.length <= MOST_PATTERNED;
  const areas = [...there, ...fresh];
  const ground = few
    ? drawGround(view, style, {
        areas: areas.map((area) => terrainArea(area, frame)),
        base: 'blank',
        keepClear: [],
      })
    : group(
        'ground',
        ...areas.map((area) =>
          element('path', {
            d: pathOf(area, xy),
            fill: style.inks.fills[area.kind],
            stroke: 'var(--ink-3)',
            'stroke-width': 0.6,
            'fill-rule': 'evenodd',
          }),
        ),
      );
  return element(
    'svg',
    { width, height, viewBox: `0 0 ${String(width)} ${String(height)}` },
    element('defs', {}, element('clipPath', { id: 'import-box' }, element('rect', { ...box }))),
    element('rect', { ...box, fill: 'var(--sheet)' }),
    element(
      'g',
      { 'clip-path': 'url(#import-box)' },
      ground,
      group('left-out', ...staying.map((record) => sketched(record, xy, 'var(--ink-3)', '5 4'))),
      group('coming-in', ...coming.map((record) => sketched(record, xy, 'var(--select)', undefined))),
    ),
    element('rect', { ...box, fill: 'none', stroke: 'var(--ink)', 'stroke-width': 1.5 }),
    scaleBar(view.unitsPerM, width, height, units, placed ? 'N up' : 'sheet up'),
  );
}

/** A thing as it is drawn over the ground: an outline, a line, a small cross or its mark. */
function sketched(
  record: AtlasRecord,
  xy: (at: LonLat) => XY,
  stroke: string,
  dash: string | undefined,
): SvgNode | null {
  const line = (d: string, width: number): SvgNode =>
    element('path', { d, fill: 'none', stroke, 'stroke-width': width, 'stroke-dasharray': dash });
  switch (record.type) {
    case 'area':
      return line(pathOf(record, xy), 1.8);
    case 'elevationGrid':
      return line(closedPath(record.corners.map((ring) => ring.map(xy))), 1.4);
    case 'line':
      return line(openPath(record.positions.map(xy)), 1.8);
    case 'hole':
      return record.line === null ? null : line(openPath(record.line.map(xy)), 1.2);
    case 'holeLocation':
      return flagMark(xy(record.at), record.label, false, screenStyle('import-flag', 0.62));
    case 'ballPosition':
      return ballMark(xy(record.at), record.label, false, screenStyle('import-ball', 0.75));
    case 'spotHeight':
    case 'slopeReading':
    case 'planeByEye':
    case 'landmark': {
      const [x, y] = xy(record.at);
      const at = (value: number): string => value.toFixed(1);
      return line(`M${at(x - 3.5)} ${at(y)}h7M${at(x)} ${at(y - 3.5)}v7`, 1.5);
    }
    default:
      return null;
  }
}

const pathOf = (area: AreaRecord, xy: (at: LonLat) => XY): string =>
  closedPath(area.rings.map((ring) => spaced(ring.map(xy))));

/** Corners that fall on one another at this size are drawn once. */
function spaced(ring: readonly XY[]): readonly XY[] {
  if (ring.length < 100) return ring;
  let [lastX, lastY] = [NaN, NaN];
  return ring.filter(([x, y]) => {
    if (Math.abs(x - lastX) < 0.7 && Math.abs(y - lastY) < 0.7) return false;
    [lastX, lastY] = [x, y];
    return true;
  });
}

function positionsOf(record: AtlasRecord): readonly LonLat[] {
  switch (record.type) {
    case 'area':
      return record.rings[0] ?? [];
    case 'elevationGrid':
      return record.corners[0] ?? [];
    case 'line':
      return record.positions;
    case 'hole':
      return record.line ?? [];
    default:
      return 'at' in record ? [record.at] : [];
  }
}

/** Only as many points as a view needs to be found. */
const withoutStrays = (points: readonly PlanePoint[]): readonly PlanePoint[] =>
  points.length < 5000 ? points : points.filter((_, i) => i % Math.ceil(points.length / 5000) === 0);

const terrainArea = (area: AreaRecord, frame: LocalFrame) => ({
  id: area.id,
  kind: area.kind,
  name: area.name,
  polygon: area.rings.map((ring) => ring.map(frame.toPlane)),
  lipHeightM: area.lipHeightM,
  treeHeightM: area.treeHeightM,
  canopyBaseM: area.canopyBaseM,
});

function scaleBar(
  unitsPerM: number,
  width: number,
  height: number,
  units: UnitsPreference,
  upWords: string,
): SvgNode {
  const yards = units.system === 'yards';
  const unitM = yards ? 3 / feetFromMetres(1) : 1;
  const lengths = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];
  const length = lengths.findLast((one) => one * unitM * unitsPerM <= 130) ?? 1;
  const bar = length * unitM * unitsPerM;
  const y = height - 9;
  const text = { 'font-size': 13, fill: 'var(--ink)' };
  return group(
    'foot',
    element('path', {
      d: `M1 ${String(y - 4)}v8M1 ${String(y)}H${bar.toFixed(1)}m0 -4v8`,
      stroke: 'var(--ink)',
      'stroke-width': 1.5,
      fill: 'none',
    }),
    element('text', { x: bar + 8, y: y + 4, ...text }, `${String(length)} ${yards ? 'yd' : 'm'}`),
    element('text', { x: width - 1, y: y + 4, 'text-anchor': 'end', ...text }, upWords),
  );
}

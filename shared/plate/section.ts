import type { PlanePoint } from '../geometry/points.ts';
import type { PlanOption } from '../planner/plan.ts';
import type { SectionGround } from '../terrain/section.ts';
import * as format from '../units/format.ts';
import type { UnitsPreference } from '../units/preference.ts';
import { element } from './element.ts';
import { flightBand } from './flightBand.ts';
import { placeLabels } from './labels.ts';
import { ballMark, landingRing } from './marks.ts';
import { openPath } from './pathData.ts';
import { dashes, strokes } from './pattern.ts';
import { distanceAxis, rug } from './sectionAxis.ts';
import { finishDistances, heightLookup, lineAxis, pathTop } from './sectionLine.ts';
import { groundShown } from './sectionGround.ts';
import { bead, cup, longFlag, sectionLabel } from './sectionMarks.ts';
import { sidePath, type SidePath } from './sectionPath.ts';
import { sectionWords } from './sectionWords.ts';
import { coverStrip } from './sectionStrip.ts';
import type { PlateStyle } from './style.ts';
import { textSize } from './style.ts';
import type { SvgNode } from './svgNode.ts';
import type { Box, XY } from './view.ts';

/** What a section along one shot shows. */
export interface SectionContent {
  readonly ground: SectionGround;
  readonly option: PlanOption;
  readonly ball: PlanePoint;
  readonly ballLabel: string;
  readonly flag: PlanePoint;
  readonly flagLabel: string;
  readonly units: UnitsPreference;
  /** "land 2 paces on"; empty for a roll. */
  readonly landText: string;
  readonly coarse: boolean;
  /** Options to compare with, drawn in the second ink, and what each is called on the sheet; empty for nothing. */
  readonly others: readonly PlanOption[];
  readonly othersText?: readonly string[];
}

interface DrawnPath {
  readonly points: readonly XY[];
  readonly flight: readonly XY[];
  readonly hops: readonly XY[];
  readonly roll: readonly XY[];
}

export interface SectionLayout {
  readonly width: number;
  readonly height: number;
}

/** Scale of a drawn section: how many times heights are stretched (1 in almost every case). */
export interface SectionDrawing {
  readonly node: SvgNode;
  readonly exaggeration: number;
  /** "heights and distances to one scale", or the stretch. */
  readonly scaleText: string;
}

/**
 * The shot from the side: the ground under the line from ball to flag over a strip of its patterns, the flight with the
 * band that holds four landings in five, landing, run-out, flag, where the balls stop, and a distance axis. Heights and
 * distances share one scale unless the drawing would be flatter than a line, and then it says so.
 */
export function drawSection(
  layout: SectionLayout,
  style: PlateStyle,
  content: SectionContent,
): SectionDrawing {
  const { option, ball, flag, units } = content;
  const { inks } = style;
  const k = style.symbolScale;
  const axis = lineAxis(ball, flag);
  const stops = finishDistances(option, axis);
  const lengthM = axis.lengthM;
  const shortM = -Math.max(1.5, lengthM * 0.09);
  const pastM =
    Math.max(lengthM * 1.1, ...stops.map((s) => Math.min(s.alongM, lengthM * 1.35))) + lengthM * 0.03;
  const rugHeight = 12 * k;
  const axisText = textSize(style, 13.5);
  const axisY = layout.height - axisText - 7 * k;
  const strip = 15 * k;
  const nameText = textSize(style, 14);
  const room = {
    top: 30 * k,
    bottom: axisY - rugHeight - nameText - 12 * k - strip,
  };
  const left = 12 * k;
  const right = layout.width - 12 * k;
  const level = Math.max(room.bottom - room.top, 20);
  const topM = Math.max(pathTop(option), ...content.others.map(pathTop));
  const { line, profile, lowM, spanM, nearM, farM } = groundShown(
    content.ground,
    axis,
    [shortM, pastM],
    topM,
    (spanM, lengthM) => (spanM * (right - left)) / level - lengthM,
  );
  const unitsPerM = (right - left) / (farM - nearM);
  // A flight too tall for the drawing shrinks both scales together; heights are stretched only where nothing would show.
  const wanted = spanM * unitsPerM;
  const exaggeration =
    wanted > level ? level / wanted : wanted < 12 * k ? Math.min(4, Math.floor((20 * k) / wanted) || 1) : 1;
  const shrink = exaggeration < 1 ? exaggeration : 1;
  const perM = unitsPerM * shrink;
  const stretch = exaggeration >= 1 ? exaggeration : 1;
  const xOf = (alongM: number): number => left + (alongM - nearM) * perM;
  const yOf = (heightM: number): number => room.bottom - (heightM - lowM) * perM * stretch;
  const groundAt = heightLookup(line.distancesM, line.heightsM, nearM);

  const drawn = sidePath(option, content.ground, axis, groundAt);
  const { rolled, flightM, firstDown } = drawn;
  const onSheet = (path: SidePath): DrawnPath => {
    const points = path.pointsM.map(([alongM, heightM]): XY => [xOf(alongM), yOf(heightM)]);
    const down = path.firstDown;
    return {
      points,
      flight: down === undefined ? [] : points.slice(0, down + 1),
      hops: down === undefined ? [] : points.slice(down, path.rollFrom + 1),
      roll: points.slice(path.rollFrom),
    };
  };
  const { points, flight, hops, roll } = onSheet(drawn);
  const others = content.others.map((other) => onSheet(sidePath(other, content.ground, axis, groundAt)));
  const groundLine = profile.map((h, i): XY => [xOf(nearM + (line.distancesM[i] ?? 0)), yOf(h)]);
  const endX = groundLine[groundLine.length - 1]?.[0] ?? right;

  const ballAt: XY = [xOf(0), yOf(groundAt(0))];
  const flagAt: XY = [xOf(lengthM), yOf(groundAt(lengthM))];
  const landing = firstDown === undefined ? null : (points[firstDown] ?? null);
  const ink = inks.propose;
  const coarseDash = content.coarse ? { 'stroke-dasharray': dashes(style, 6, 5) } : {};

  const apex = flight.reduce<XY | null>((best, p) => (best === null || p[1] < best[1] ? p : best), null);
  const taken: Box[] = [
    { x: ballAt[0] - 13 * k, y: ballAt[1] - 34 * k, width: 26 * k, height: 36 * k },
    { x: flagAt[0] - 4 * k, y: flagAt[1] - 62 * k, width: 26 * k, height: 64 * k },
    ...[points, ...others.map((other) => other.points)]
      .flat()
      .map(([x, y]) => ({ x: x - 3 * k, y: y - 4 * k, width: 6 * k, height: 8 * k })),
    ...groundLine.map(([x, y]) => ({ x: x - 3 * k, y: y - 1, width: 6 * k, height: strip + 2 })),
  ];
  const runM = option.runM;
  const runText = firstDown === undefined ? 'rolls' : 'runs out';
  const requests = sectionWords(option, style, units, {
    landText: content.landText,
    runText,
    landing,
    apex,
    from: landing ?? ballAt,
    end: points[points.length - 1] ?? flagAt,
    others: others.map(({ points, hops }, i) => ({
      text: content.othersText?.[i] ?? '',
      at: hops[0] ?? points[points.length - 1] ?? flagAt,
    })),
  });
  const placed = placeLabels(requests, taken, {
    x: 2,
    y: 1,
    width: layout.width - 4,
    // Words stand over the ground: below it are its own names.
    height: Math.max(ballAt[1], flagAt[1]),
  });

  const scaleText =
    stretch === 1
      ? 'heights and distances to one scale'
      : `heights drawn ${format.strokes(stretch).replace('.00', '')} times`;
  const spokenLanding =
    firstDown === undefined
      ? 'rolls all the way'
      : `carries ${format.withUnit(format.distance(option.carryM, units))}`;
  const description =
    `Section along the shot from ball ${content.ballLabel} to flag ${content.flagLabel}: ${spokenLanding}, ` +
    `then ${runText} ${format.withUnit(format.distance(runM, units))}; ${scaleText}.`;
  const node = element(
    'svg',
    {
      width: layout.width,
      height: layout.height,
      viewBox: `0 0 ${layout.width} ${layout.height}`,
      role: 'img',
      'aria-label': description,
    },
    element('title', {}, description),
    // The strip lies over the band, so that no part of it shows below the ground.
    flightBand(option, flightM, axis, groundAt, ([alongM, heightM]) => [xOf(alongM), yOf(heightM)], style),
    coverStrip(line.coverCodes, groundLine, strip, nameText, style),
    strokes(openPath(groundLine), inks.ink, 2 * k, { 'stroke-linejoin': 'round' }),
    ...others.flatMap((other) => [
      strokes(openPath(other.roll), inks.ink2, 2 * k, { 'stroke-dasharray': dashes(style, 2, 3) }),
      strokes(openPath(other.hops), inks.ink2, 1.4 * k),
      strokes(openPath(other.flight), inks.ink2, 1.9 * k, { 'stroke-dasharray': dashes(style, 13, 6) }),
    ]),
    strokes(openPath(roll), inks.halo, 5 * k),
    strokes(openPath(roll), ink, 3.2 * k, { 'stroke-linecap': 'round', ...coarseDash }),
    strokes(openPath(hops), ink, 1.9 * k, coarseDash),
    strokes(openPath(flight), inks.halo, 5 * k, { 'stroke-opacity': 0.8 }),
    strokes(openPath(flight), ink, 2.5 * k, { 'stroke-dasharray': dashes(style, 13, 6) }),
    ...(rolled ? [] : option.path.touchdowns.slice(1).map((i) => bead(points[i], ink, k))),
    cup(flagAt, style),
    longFlag(flagAt, content.flagLabel, style),
    element('circle', { cx: ballAt[0], cy: ballAt[1] - 4 * k, r: 4.4 * k, fill: inks.ink }),
    ballMark([ballAt[0], ballAt[1] - 22 * k], content.ballLabel, true, style),
    landing === null ? null : landingRing(landing, ink, style),
    ...placed.map((label) => sectionLabel(label, style)),
    rug(stops, xOf, axisY - 2 * k, rugHeight, [left, endX], style, axisText),
    distanceAxis(xOf, axisY, farM, style, units, axisText),
  );
  return { node, exaggeration: stretch, scaleText };
}

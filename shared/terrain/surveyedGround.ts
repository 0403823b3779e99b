import type { Ceiling } from './ceiling.ts';
import type { PlanePoint } from '../geometry/points.ts';
import { type Cover, coverCode, type CoverCode, covers } from '../words/vocabulary.ts';
import { bunkerDepth, DEFAULT_LIP_M } from './bunkerShape.ts';
import { type CoverRaster, DEFAULT_COVER, rasterCover } from './coverRaster.ts';
import type { FittedSurface } from './fitSurface.ts';
import { BLOCK_BITS, type GroundReads, groundReads } from './groundReads.ts';
import { type GroundObstacle, obstaclesOf } from './obstacles.ts';
import { edgeDistance, type FlatPolygon, flatPolygon } from './rings.ts';
import { grainOf } from './grain.ts';
import type { Surface } from './surface.ts';
import type { TerrainInput } from './terrainInput.ts';
import { sandFloor } from './sandFloor.ts';
import { whichBunker } from './whichBunker.ts';

/** The ground of one complex as a ball meets it (it satisfies the ball model's `Ground`), with what people ask of it. */
export interface SurveyedGround<S extends Surface = FittedSurface> {
  /** The pull of the grain of its greens; left out where there is none. */
  readonly grain?: NonNullable<ReturnType<typeof grainOf>>;
  /** Writes height (m), dz/dEast, dz/dNorth and the cover code at the point in at[0..1] into out[0..3]. Allocates nothing. */
  sample(at: Float64Array, out: Float64Array): void;
  /** The cover code alone. */
  codeAt(at: Float64Array): CoverCode;
  readonly maxHeightM: number;
  /** Over blocks; sand lies below it. */
  readonly ceiling: Ceiling | null;
  readonly obstacles: readonly GroundObstacle[];
  /** What the ground was made from: the fit, or one of an ensemble that agrees with the evidence. */
  readonly surface: S;
  readonly cover: CoverRaster;
  /** Notes what `sample`, `heightAt`, `coverAt` and `isOnGreen` look at. */
  readonly reads: GroundReads;
  readonly extent: TerrainInput['extent'];
  heightAt(at: PlanePoint): number;
  coverAt(at: PlanePoint): Cover;
  isOnGreen(at: PlanePoint): boolean;
  /** Distance to the nearest edge of a green, metres, positive on it; -Infinity where there is no green. */
  greenEdgeDistance(at: PlanePoint): number;
  /** Distances from `from` towards `to`, metres and in order, at which the line enters and leaves greens. */
  greenCrossings(from: PlanePoint, to: PlanePoint): GreenCrossing[];
  /**
   * How far onto the green a point lies along the line from `from`: positive beyond the edge the line last entered by,
   * negative short of the edge it will enter by if drawn on; null off it where no green lies ahead, past the back of one too.
   */
  distanceOntoGreen(from: PlanePoint, at: PlanePoint): number | null;
}

export interface GreenCrossing {
  readonly distanceM: number;
  readonly enters: boolean;
}

const DEFAULT_CODE = coverCode(DEFAULT_COVER);
const BUNKER_CODE = coverCode('bunker');
/** How far a line is drawn on in search of a green, metres. */
const LOOK_AHEAD_M = 300;

/**
 * Ground from a fitted surface and the areas over it: cover by kind (`coverPrecedence`), light rough where nothing was
 * traced, bunkers sunk below the surface by their lip with a steep face (`bunkerDepth`), crowns and walls as obstacles.
 */
export function surveyedGround<S extends Surface>(surface: S, input: TerrainInput): SurveyedGround<S> {
  const cover = rasterCover(input);
  const bunkers = input.areas
    .filter((area) => area.kind === 'bunker')
    .map((area) => ({ polygon: flatPolygon(area.polygon), lipM: area.lipHeightM ?? DEFAULT_LIP_M }));
  const greens = input.areas.filter((area) => area.kind === 'green').map((area) => flatPolygon(area.polygon));
  const depth = new Float64Array(3);
  const reads = groundReads(cover);
  const { columns: blockColumns } = reads;

  const { codes, columns, rows } = cover;
  const sands = whichBunker(input.extent, bunkers);
  const isFloor = sandFloor(cover);
  // In an array, because engines unwrap every fraction that a closure holds.
  const frame = Float64Array.of(cover.westM, cover.southM, 1 / cover.cellM);

  /** The cell under a point, which is noted; -1 beyond the raster. */
  const cellAt = (at: Float64Array): number => {
    const x = ((at[0] as number) - (frame[0] as number)) * (frame[2] as number);
    const y = ((at[1] as number) - (frame[1] as number)) * (frame[2] as number);
    if (x >= 0 && x < columns && y >= 0 && y < rows) {
      const column = x | 0;
      const row = y | 0;
      reads.into[(row >> BLOCK_BITS) * blockColumns + (column >> BLOCK_BITS)] = 1;
      return row * columns + column;
    }
    // Noted for what may stand out there: the cover is the same everywhere.
    const inColumn = Math.min(columns - 1, Math.max(0, Math.floor(x)));
    const inRow = Math.min(rows - 1, Math.max(0, Math.floor(y)));
    reads.into[(inRow >> BLOCK_BITS) * blockColumns + (inColumn >> BLOCK_BITS)] = 1;
    return -1;
  };
  const codeHere = (at: Float64Array): CoverCode => {
    const cell = cellAt(at);
    return cell < 0 ? DEFAULT_CODE : (codes[cell] as CoverCode);
  };
  const sample = (at: Float64Array, out: Float64Array): void => {
    surface.sampleAt(at, out);
    const cell = cellAt(at);
    if (cell < 0) {
      out[3] = DEFAULT_CODE;
      return;
    }
    const code = codes[cell] as CoverCode;
    out[3] = code;
    if (code !== BUNKER_CODE) return;
    const bunker = bunkers[(sands[cell] as number) - 1];
    if (bunker === undefined) return;
    if (isFloor(cell, bunker)) {
      out[0] = (out[0] as number) - bunker.lipM;
      return;
    }
    bunkerDepth(bunker.polygon, bunker.lipM, at[0] as number, at[1] as number, depth);
    out[0] = (out[0] as number) - (depth[0] as number);
    out[1] = (out[1] as number) - (depth[1] as number);
    out[2] = (out[2] as number) - (depth[2] as number);
  };

  const scratch = new Float64Array(4);
  const place = new Float64Array(2);
  const placed = ({ eastM, northM }: PlanePoint): Float64Array => {
    place[0] = eastM;
    place[1] = northM;
    return place;
  };
  const greenEdgeDistance = (at: PlanePoint): number =>
    greens.reduce((most, green) => Math.max(most, edgeDistance(green, at.eastM, at.northM)), -Infinity);
  const greenCrossings = (from: PlanePoint, to: PlanePoint): GreenCrossing[] =>
    greens.flatMap((green) => crossingsOf(green, from, to)).sort((a, b) => a.distanceM - b.distanceM);

  const grain = grainOf(input);
  return {
    sample,
    ...(grain !== undefined && { grain }),
    codeAt: codeHere,
    maxHeightM: surface.highestM ?? Infinity,
    ceiling: surface.ceiling ?? null,
    obstacles: obstaclesOf(input, surface),
    surface,
    cover,
    reads,
    extent: input.extent,
    heightAt(at) {
      sample(placed(at), scratch);
      return scratch[0] as number;
    },
    coverAt: (at) => covers[codeHere(placed(at))] ?? DEFAULT_COVER,
    isOnGreen: (at) => codeHere(placed(at)) === coverCode('green'),
    greenEdgeDistance,
    greenCrossings,
    distanceOntoGreen(from, at) {
      const dx = at.eastM - from.eastM;
      const dy = at.northM - from.northM;
      const distanceM = Math.sqrt(dx * dx + dy * dy);
      const reach = distanceM > 0 ? (distanceM + LOOK_AHEAD_M) / distanceM : 0;
      const crossings = greenCrossings(from, {
        eastM: from.eastM + dx * reach,
        northM: from.northM + dy * reach,
      });
      const passed = crossings.filter((c) => c.enters && c.distanceM <= distanceM).at(-1);
      const next = crossings.find((c) => c.enters && c.distanceM > distanceM);
      const inside = greenEdgeDistance(at) >= 0;
      if (inside) return distanceM - (passed?.distanceM ?? 0);
      return next === undefined ? null : distanceM - next.distanceM;
    },
  };
}

function crossingsOf(polygon: FlatPolygon, from: PlanePoint, to: PlanePoint): GreenCrossing[] {
  const dx = to.eastM - from.eastM;
  const dy = to.northM - from.northM;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return [];
  const distances: number[] = [];
  for (const ring of polygon) {
    let j = ring.length - 2;
    for (let i = 0; i < ring.length; i += 2) {
      // Offsets of both ends of the edge from the line, half-open so that a corner counts once.
      const ax = (ring[j] as number) - from.eastM;
      const ay = (ring[j + 1] as number) - from.northM;
      const bx = (ring[i] as number) - from.eastM;
      const by = (ring[i + 1] as number) - from.northM;
      const a = (dx * ay - dy * ax) / length;
      const b = (dx * by - dy * bx) / length;
      if (a > 0 !== b > 0) {
        const t = a / (a - b);
        const along = ((ax + t * (bx - ax)) * dx + (ay + t * (by - ay)) * dy) / length;
        if (along >= 0 && along <= length) distances.push(along);
      }
      j = i;
    }
  }
  distances.sort((p, q) => p - q);
  let inside = edgeDistance(polygon, from.eastM, from.northM) > 0;
  return distances.map((distanceM) => {
    inside = !inside;
    return { distanceM, enters: inside };
  });
}

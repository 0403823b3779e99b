import type { PlanePoint } from '../geometry/points.ts';
import { atan2 } from '../numeric/elementary.ts';
import { kernelLog } from './thinPlateKernel.ts';

/** Spacing of the points of a break line at which its fold angle is free, metres. */
const FOLD_SPACING_M = 2;

/**
 * Folds along break lines. Each fold is the shape a thin plate takes when its slope across the line jumps by a hat
 * function of the place along it: the line integral of the bending moment of the kernel, d2/dn2 (r^2 log r) / (8 pi), in
 * closed form on straight pieces. It bends nowhere else more than it must, so a surface with folds is still a plate of
 * least bending, only hinged at those lines. The fold dies out at both ends of its line.
 */
export interface Folds {
  readonly count: number;
  /** The lines as they are folded: points at even spacing. */
  readonly lines: readonly (readonly PlanePoint[])[];
  /** Writes the height of each fold of unit slope jump at a point into out[0..count-1]. */
  sample(eastM: number, northM: number, out: Float64Array): void;
}

interface Piece {
  readonly eastM: number;
  readonly northM: number;
  readonly alongEast: number;
  readonly alongNorth: number;
  readonly lengthM: number;
  /** Fold that rises along the piece and the one that falls, or -1. */
  readonly rising: number;
  readonly falling: number;
}

export function foldsAlong(lines: readonly (readonly PlanePoint[])[]): Folds {
  const pieces: Piece[] = [];
  const folded: PlanePoint[][] = [];
  let count = 0;
  for (const line of lines) {
    const points = evenly(line, FOLD_SPACING_M);
    if (points.length < 3) continue;
    folded.push(points);
    for (let i = 0; i + 1 < points.length; i += 1) {
      const a = points[i] as PlanePoint;
      const b = points[i + 1] as PlanePoint;
      const dx = b.eastM - a.eastM;
      const dy = b.northM - a.northM;
      const lengthM = Math.sqrt(dx * dx + dy * dy);
      if (lengthM === 0) continue;
      pieces.push({
        eastM: a.eastM,
        northM: a.northM,
        alongEast: dx / lengthM,
        alongNorth: dy / lengthM,
        lengthM,
        rising: i + 2 < points.length ? count + i : -1,
        falling: i > 0 ? count + i - 1 : -1,
      });
    }
    count += points.length - 2;
  }

  const sample = (eastM: number, northM: number, out: Float64Array): void => {
    for (let k = 0; k < count; k += 1) out[k] = 0;
    for (const piece of pieces) {
      const px = eastM - piece.eastM;
      const py = northM - piece.northM;
      const u = px * piece.alongEast + py * piece.alongNorth;
      const v = py * piece.alongEast - px * piece.alongNorth;
      const w1 = -u;
      const w2 = piece.lengthM - u;
      const r1 = w1 * w1 + v * v;
      const r2 = w2 * w2 + v * v;
      const log1 = r1 > 1e-300 ? kernelLog(r1) : 0;
      const log2 = r2 > 1e-300 ? kernelLog(r2) : 0;
      // atan(w2 / v) - atan(w1 / v): the angle the piece is seen under, with the sign of v.
      const angle = v === 0 ? 0 : 4 * v * atan2(v * piece.lengthM, v * v + w1 * w2);
      // Integrals over the piece of [log r^2 + 1 + 2 v^2/r^2] and of w times that, w measured from the foot point.
      const even = w2 * log2 - w1 * log1 - (w2 - w1) + angle;
      const odd = 0.5 * (r2 * log2 - r1 * log1 - (r2 - r1) + w2 * w2 - w1 * w1) + v * v * (log2 - log1);
      const rise = (u * even + odd) / (piece.lengthM * 8 * Math.PI);
      if (piece.rising >= 0) out[piece.rising] = (out[piece.rising] as number) + rise;
      if (piece.falling >= 0) {
        out[piece.falling] = (out[piece.falling] as number) + even / (8 * Math.PI) - rise;
      }
    }
  };
  return { count, lines: folded, sample };
}

/** Points along a line at even spacing close to the one asked for, at least three, ends included. */
export function evenly(line: readonly PlanePoint[], spacingM: number): PlanePoint[] {
  const lengths = [0];
  for (let i = 1; i < line.length; i += 1) {
    const a = line[i - 1] as PlanePoint;
    const b = line[i] as PlanePoint;
    const dx = b.eastM - a.eastM;
    const dy = b.northM - a.northM;
    lengths.push((lengths[i - 1] as number) + Math.sqrt(dx * dx + dy * dy));
  }
  const total = lengths[lengths.length - 1] as number;
  if (line.length < 2 || total === 0) return [...line];
  const pieces = Math.max(2, Math.round(total / spacingM));
  const points: PlanePoint[] = [];
  let segment = 1;
  for (let k = 0; k <= pieces; k += 1) {
    const s = (total * k) / pieces;
    while (segment < line.length - 1 && (lengths[segment] as number) < s) segment += 1;
    const a = line[segment - 1] as PlanePoint;
    const b = line[segment] as PlanePoint;
    const span = (lengths[segment] as number) - (lengths[segment - 1] as number);
    const t = span > 0 ? Math.min(1, (s - (lengths[segment - 1] as number)) / span) : 0;
    points.push({
      eastM: a.eastM + t * (b.eastM - a.eastM),
      northM: a.northM + t * (b.northM - a.northM),
    });
  }
  return points;
}

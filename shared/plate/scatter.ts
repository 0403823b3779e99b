/**
 * Repeatable scatter: a number in [0, 1) from a seed and a cell, so that a symbol keeps its place from one redraw to the
 * next. The mixing is the finaliser of MurmurHash3 (Appleby, public domain; from memory).
 */
export function cellNoise(seed: number, i: number, j: number, k: number): number {
  let h = (seed ^ Math.imul(i, 0x9e3779b1) ^ Math.imul(j, 0x85ebca77) ^ Math.imul(k, 0xc2b2ae3d)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  h ^= h >>> 16;
  return (h >>> 0) / 4294967296;
}

/** A seed from a record's id (FNV-1a, public domain; from memory). */
export function seedOf(id: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < id.length; i += 1) h = Math.imul(h ^ id.charCodeAt(i), 0x01000193);
  return h | 0;
}

export interface ScatterRequest {
  readonly seed: number;
  readonly spacing: number;
  /** 0 keeps a plain triangular grid, 1 lets each point wander over its whole cell. */
  readonly wander: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** Where cell 0, 0 lies: fixed to the ground, so that the scatter moves with it. */
  readonly originX: number;
  readonly originY: number;
  /** No more points than this: beyond it the spacing grows. */
  readonly most: number;
}

/** Calls `visit` for each scattered point with a noise function of its own. */
export function scatter(
  request: ScatterRequest,
  visit: (x: number, y: number, noise: (k: number) => number) => void,
): void {
  const { left, top, right, bottom, originX, originY, seed, wander } = request;
  const area = Math.max(0, right - left) * Math.max(0, bottom - top);
  const spacing = Math.max(request.spacing, Math.sqrt(area / request.most));
  const rowHeight = spacing * 0.87;
  for (let j = Math.floor((top - originY) / rowHeight); j <= (bottom - originY) / rowHeight; j += 1) {
    const shift = (j & 1) * 0.5;
    for (let i = Math.floor((left - originX) / spacing) - 1; i <= (right - originX) / spacing; i += 1) {
      const x = originX + (i + shift + 0.5 + (cellNoise(seed, i, j, 0) - 0.5) * wander) * spacing;
      const y = originY + (j + 0.5 + (cellNoise(seed, i, j, 1) - 0.5) * wander) * rowHeight;
      if (x < left || x > right || y < top || y > bottom) continue;
      visit(x, y, (k) => cellNoise(seed, i, j, k + 2));
    }
  }
}

import { coverCode } from '../words/vocabulary.ts';
import { DEFAULT_LIP_M, faceWidthM } from './bunkerShape.ts';
import type { CoverRaster } from './coverRaster.ts';
import type { MadeGround } from './groundChange.ts';
import { BLOCK_BITS } from './groundReads.ts';
import { type FlatPolygon, flatPolygon } from './rings.ts';
import { whichBunker } from './whichBunker.ts';

const BUNKER = coverCode('bunker');
/** Room for rounding, metres. */
const ROUNDING_M = 1e-6;

interface Bunker {
  readonly polygon: FlatPolygon;
  readonly lipM: number;
  /** The same for bunkers that sink the ground alike. */
  readonly text: string;
}

/** Where the sand of two bunkers lies at another depth: everywhere (`edges` null), or within reach of these edges. */
interface Apart {
  readonly edges: readonly Edge[] | null;
  readonly reachM: number;
}

type Edge = readonly [fromEastM: number, fromNorthM: number, toEastM: number, toNorthM: number];

/**
 * Marks the blocks in which sand that stays sand is sunk otherwise: the depth at a point of a bunker hangs on no edge
 * farther away than its face is wide (`bunkerDepth`). Sand that comes or goes is another cover, and not told here.
 */
export function markSand(before: MadeGround, after: MadeGround, changed: Uint8Array): void {
  const olds = bunkersOf(before);
  const news = bunkersOf(after);
  const [inOld, inNew] = [new Set(olds.map(({ text }) => text)), new Set(news.map(({ text }) => text))];
  const kept = [
    olds.filter(({ text }) => inNew.has(text)),
    news.filter(({ text }) => inOld.has(text)),
  ] as const;
  const inOrder =
    kept[0].every(({ text }, i) => text === kept[1][i]?.text) && kept[0].length === kept[1].length;
  const looked = [...olds, ...news].filter(({ text }) => !inOrder || !inOld.has(text) || !inNew.has(text));
  if (looked.length === 0) return;
  const was = whichBunker(before.input.extent, olds);
  const is = whichBunker(after.input.extent, news);
  const { cover, reads } = after.ground;
  const { columns, cellM } = cover;
  const halfCellM = (cellM * Math.SQRT2) / 2;
  const known = new Map<number, Apart | null>();
  const apartAt = (old: number, now: number): Apart | null => {
    const key = old * (news.length + 1) + now;
    let found = known.get(key);
    if (found === undefined) {
      found = apart(olds[old - 1], news[now - 1]);
      known.set(key, found);
    }
    return found;
  };
  for (const bunker of looked) {
    const [west, south, east, north] = cellsOf(bunker.polygon, cover);
    for (let row = south; row <= north; row += 1) {
      for (let column = west; column <= east; column += 1) {
        const block = (row >> BLOCK_BITS) * reads.columns + (column >> BLOCK_BITS);
        const k = row * columns + column;
        if (changed[block] !== 0 || cover.codes[k] !== BUNKER || before.ground.cover.codes[k] !== BUNKER)
          continue;
        const found = apartAt(was[k] as number, is[k] as number);
        if (found === null) continue;
        const eastM = cover.westM + (column + 0.5) * cellM;
        const northM = cover.southM + (row + 0.5) * cellM;
        const reachM = found.reachM + halfCellM + ROUNDING_M;
        if (found.edges?.some((edge) => distanceTo(edge, eastM, northM) <= reachM) ?? true)
          changed[block] = 1;
      }
    }
  }
}

const bunkersOf = ({ input }: MadeGround): readonly Bunker[] =>
  input.areas
    .filter(({ kind }) => kind === 'bunker')
    .map((area) => {
      const lipM = area.lipHeightM ?? DEFAULT_LIP_M;
      return { polygon: flatPolygon(area.polygon), lipM, text: JSON.stringify([area.polygon, lipM]) };
    });

function apart(old: Bunker | undefined, now: Bunker | undefined): Apart | null {
  if (now === undefined || old?.lipM !== now.lipM) return { edges: null, reachM: 0 };
  if (old.text === now.text) return null;
  const [a, b] = [edgesOf(old.polygon), edgesOf(now.polygon)];
  const [inA, inB] = [new Set(a.map(String)), new Set(b.map(String))];
  const shared = [
    a.filter((edge) => inB.has(String(edge))),
    b.filter((edge) => inA.has(String(edge))),
  ] as const;
  // Of edges equally near the first counts.
  const inOrder = String(shared[0]) === String(shared[1]);
  const edges = inOrder
    ? [...a.filter((edge) => !inB.has(String(edge))), ...b.filter((edge) => !inA.has(String(edge)))]
    : [...a, ...b];
  return { edges, reachM: faceWidthM(old.lipM) };
}

/** In the order in which `edgeDistance` looks at them. */
const edgesOf = (polygon: FlatPolygon): readonly Edge[] =>
  polygon.flatMap((ring) => {
    const edges: Edge[] = [];
    let j = ring.length - 2;
    for (let i = 0; i < ring.length; i += 2) {
      edges.push([ring[j] as number, ring[j + 1] as number, ring[i] as number, ring[i + 1] as number]);
      j = i;
    }
    return edges;
  });

function distanceTo([ax, ay, bx, by]: Edge, eastM: number, northM: number): number {
  const [ux, uy, px, py] = [bx - ax, by - ay, eastM - ax, northM - ay];
  const length2 = ux * ux + uy * uy;
  const t = length2 > 0 ? Math.min(1, Math.max(0, (px * ux + py * uy) / length2)) : 0;
  const [dx, dy] = [px - t * ux, py - t * uy];
  return Math.sqrt(dx * dx + dy * dy);
}

/** First and last columns and rows of the cells a polygon may hold, within the raster. */
function cellsOf(
  polygon: FlatPolygon,
  { westM, southM, cellM, columns, rows }: CoverRaster,
): readonly [west: number, south: number, east: number, north: number] {
  const [east, north]: [number[], number[]] = [[], []];
  for (const ring of polygon) ring.forEach((at, i) => (i % 2 === 0 ? east : north).push(at));
  const within = (cell: number, count: number): number => Math.min(count - 1, Math.max(0, Math.floor(cell)));
  return [
    within((Math.min(...east) - westM) / cellM, columns),
    within((Math.min(...north) - southM) / cellM, rows),
    within((Math.max(...east) - westM) / cellM, columns),
    within((Math.max(...north) - southM) / cellM, rows),
  ];
}

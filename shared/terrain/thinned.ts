import { edgeDistance, flatPolygon } from './rings.ts';
import type { TerrainInput } from './terrainInput.ts';

type Heights = TerrainInput['heights'];

/** Beyond this many heights those that lie close together are averaged: a dense fit grows with the cube of their number. */
const MOST_HEIGHTS = 500;
/**
 * Nodes of elevation models fill what the spot heights leave of this, but may always have a share; two thirds of them go to
 * the greens and what lies within this of them, where slopes matter most. A fit of so many takes a quarter of a second.
 */
const MOST_WITH_GRIDS = 240;
const LEAST_OF_GRIDS = 90;
const ABOUT_GREEN_M = 3;

/** Spot heights, averaged where there are too many. */
export const thinnedHeights = (heights: Heights): Heights => gathered(heights, MOST_HEIGHTS, 1e-9);

/** The nodes of grids, thinned apart from the spot heights, which are the better evidence and are not to be averaged in. */
export function thinnedGrids(input: TerrainInput): Heights {
  const greens = input.areas.filter((area) => area.kind === 'green').map((area) => flatPolygon(area.polygon));
  const about: Heights[number][] = [];
  const beyond: Heights[number][] = [];
  for (const { id, nodes, accuracyM } of input.grids ?? []) {
    for (const { at, heightM } of nodes) {
      const near = greens.some((green) => edgeDistance(green, at.eastM, at.northM) > -ABOUT_GREEN_M);
      (near ? about : beyond).push({ id, at, heightM, accuracyM });
    }
  }
  const most = Math.max(LEAST_OF_GRIDS, MOST_WITH_GRIDS - input.heights.length);
  const mostAbout = beyond.length === 0 ? most : Math.round((2 * most) / 3);
  const kept = gathered(about, mostAbout, evenCell(about, mostAbout));
  const mostBeyond = most - kept.length;
  return [...kept, ...gathered(beyond, mostBeyond, evenCell(beyond, mostBeyond))];
}

/** Somewhat less than the cell that leaves so many of points spread evenly over their box. */
function evenCell(points: Heights, most: number): number {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { at } of points) {
    west = Math.min(west, at.eastM);
    east = Math.max(east, at.eastM);
    south = Math.min(south, at.northM);
    north = Math.max(north, at.northM);
  }
  return Math.sqrt(((east - west) * (north - south)) / most) / 1.3;
}

/**
 * Heights averaged by square cells, just large enough to leave no more than `most`; place and height are averaged
 * alike, so a plane stays that plane. As they are where there are few enough.
 */
function gathered(heights: Heights, most: number, leastCellM: number): Heights {
  if (heights.length <= most) return heights;
  const west = heights.reduce((least, h) => Math.min(least, h.at.eastM), Infinity);
  const east = heights.reduce((most, h) => Math.max(most, h.at.eastM), -Infinity);
  const south = heights.reduce((least, h) => Math.min(least, h.at.northM), Infinity);
  const north = heights.reduce((most, h) => Math.max(most, h.at.northM), -Infinity);
  const side = Math.max(east - west, north - south);
  for (let cellM = Math.max(side / 64, leastCellM); ; cellM *= 1.1) {
    const cells = new Map<string, Heights[number][]>();
    for (const h of heights) {
      const cell = `${Math.floor((h.at.eastM - west) / cellM)},${Math.floor((h.at.northM - south) / cellM)}`;
      const members = cells.get(cell);
      if (members === undefined) cells.set(cell, [h]);
      else members.push(h);
    }
    if (cells.size <= most) return [...cells.values()].map(average);
  }
}

function average(members: Heights): Heights[number] {
  const mean = (of: (h: Heights[number]) => number): number =>
    members.reduce((sum, h) => sum + of(h), 0) / members.length;
  const [first] = members;
  const id = first?.id ?? '';
  return {
    id: members.length > 1 ? `${id} and ${members.length - 1} near it` : id,
    at: { eastM: mean((h) => h.at.eastM), northM: mean((h) => h.at.northM) },
    heightM: mean((h) => h.heightM),
    // Errors of one instrument and one reader do not average out; bumps between the readings do, and are small beside them.
    accuracyM: Math.sqrt(mean((h) => squared(h.accuracyM))),
  };
}

const squared = (x: number): number => x * x;

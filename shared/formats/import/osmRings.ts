import type { LonLat } from '../../geometry/points.ts';

/** Ways joined end to end into closed rings, and whether any were left over. Positions decide what joins. */
export function joinedRings(ways: readonly (readonly LonLat[])[]): {
  readonly rings: readonly (readonly LonLat[])[];
  readonly open: boolean;
} {
  const rings: (readonly LonLat[])[] = [];
  const key = (at: LonLat | undefined): string =>
    at === undefined ? '' : `${String(at[0])},${String(at[1])}`;
  // Ends of the ways not yet used, so that the next one is found at once.
  const byEnd = new Map<string, Set<number>>();
  const put = (end: string, way: number): void => {
    const there = byEnd.get(end);
    if (there === undefined) byEnd.set(end, new Set([way]));
    else there.add(way);
  };
  const unused = new Set<number>();
  ways.forEach((way, i) => {
    if (way.length < 2) return;
    unused.add(i);
    put(key(way[0]), i);
    put(key(way.at(-1)), i);
  });
  const take = (i: number): readonly LonLat[] => {
    const way = ways[i] ?? [];
    unused.delete(i);
    byEnd.get(key(way[0]))?.delete(i);
    byEnd.get(key(way.at(-1)))?.delete(i);
    return way;
  };
  let open = false;
  for (const start of ways.keys()) {
    if (!unused.has(start)) continue;
    const ring = [...take(start)];
    const home = key(ring[0]);
    let end = key(ring.at(-1));
    while (end !== home) {
      const [next] = byEnd.get(end) ?? [];
      if (next === undefined) break;
      const way = take(next);
      const onward = key(way[0]) === end ? way : way.toReversed();
      for (const at of onward.slice(1)) ring.push(at);
      end = key(ring.at(-1));
    }
    if (end === home && ring.length >= 4) rings.push(ring.slice(0, -1));
    else open = true;
  }
  return { rings, open };
}

import type { LeftOut } from './importPreview.ts';

const MOST_PLACES = 5;

/** Gathers what is left out by kind and reason. */
export function leftOutList(): {
  add(what: string, why: string, place: string): void;
  readonly list: () => readonly LeftOut[];
} {
  const entries = new Map<string, { what: string; why: string; count: number; places: string[] }>();
  return {
    add(what, why, place) {
      const key = `${what}\n${why}`;
      const entry = entries.get(key) ?? { what, why, count: 0, places: [] };
      entry.count += 1;
      if (entry.places.length < MOST_PLACES) entry.places.push(place);
      entries.set(key, entry);
    },
    list: () => [...entries.values()],
  };
}

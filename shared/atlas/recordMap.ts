import type { AtlasDocument, AtlasRecord, RecordId } from './records.ts';

/** A record as a change leaves it; null where the change took it away. */
export interface RecordChange {
  readonly id: RecordId;
  readonly record: AtlasRecord | null;
}

/** Records are kept in runs of so many: a power of two. */
const BITS = 6;
const RUN = 1 << BITS;

type Run = readonly (AtlasRecord | undefined)[];
type ByType = ReadonlyMap<AtlasRecord['type'], readonly AtlasRecord[]>;

const none: Run = [];
const runTypes = new WeakMap<Run, ByType>();

/** The records of a run by type, sorted out once for all documents that share the run. */
function byType(run: Run): ByType {
  const known = runTypes.get(run);
  if (known !== undefined) return known;
  const made = new Map<AtlasRecord['type'], AtlasRecord[]>();
  for (const record of run) {
    if (record === undefined) continue;
    const own = made.get(record.type);
    if (own === undefined) made.set(record.type, [record]);
    else own.push(record);
  }
  runTypes.set(run, made);
  return made;
}

/** Where each id has its place, for all documents made of one another: a place once given is never another's. */
interface Places {
  readonly of: Map<RecordId, number>;
  next: number;
}

/**
 * The records of a document by id, immutable, in the order they came. What is changed shares all runs of records that the
 * change did not touch, so that a step on an atlas of thousands costs a few kilobytes, and what changed between two of one
 * descent is found by comparing runs. A record that comes back takes its old place in the order.
 */
export class RecordMap implements ReadonlyMap<RecordId, AtlasRecord> {
  readonly size: number;
  readonly #places: Places;
  readonly #runs: readonly Run[];

  private constructor(places: Places, runs: readonly Run[], size: number) {
    this.#places = places;
    this.#runs = runs;
    this.size = size;
  }

  /** Later records replace earlier ones of the same id. */
  static of(records: Iterable<AtlasRecord>): RecordMap {
    const places: Places = { of: new Map(), next: 0 };
    const changes: RecordChange[] = [];
    for (const record of records) changes.push({ id: record.id, record });
    return new RecordMap(places, [], 0).with(changes);
  }

  with(changes: Iterable<RecordChange>): RecordMap {
    const { of } = this.#places;
    const runs = this.#runs.slice();
    const own = new Map<number, (AtlasRecord | undefined)[]>();
    let { size } = this;
    for (const { id, record } of changes) {
      let at = of.get(id);
      if (at === undefined) {
        if (record === null) continue;
        at = this.#places.next;
        this.#places.next += 1;
        of.set(id, at);
      }
      const index = at >> BITS;
      let run = own.get(index);
      if (run === undefined) {
        run = (runs[index] ?? []).slice();
        own.set(index, run);
        while (runs.length < index) runs.push([]);
        runs[index] = run;
      }
      const slot = at & (RUN - 1);
      while (run.length < slot) run.push(undefined);
      size += Number(record !== null) - Number(run[slot] !== undefined);
      run[slot] = record ?? undefined;
    }
    return new RecordMap(this.#places, runs, size);
  }

  /**
   * What turns these records into others of one descent; null where they are of another.
   * `ordered`: the records that stay keep their order and new ones come last.
   */
  changesTo(
    after: RecordMap,
  ): { readonly changes: readonly RecordChange[]; readonly ordered: boolean } | null {
    if (after.#places !== this.#places) return null;
    const changes: RecordChange[] = [];
    const gone: RecordChange[] = [];
    let firstNew = Infinity;
    let lastOld = -1;
    const count = Math.max(this.#runs.length, after.#runs.length);
    for (let index = 0; index < count; index += 1) {
      const old = this.#runs[index] ?? none;
      const now = after.#runs[index] ?? none;
      if (old === now) {
        if (firstNew < Infinity && old.some((record) => record !== undefined)) lastOld = index * RUN;
        continue;
      }
      for (let slot = 0; slot < Math.max(old.length, now.length); slot += 1) {
        const [before, record] = [old[slot], now[slot]];
        if (before !== undefined && record !== undefined) lastOld = index * RUN + slot;
        if (before === record) continue;
        if (record === undefined) gone.push({ id: before?.id ?? '', record: null });
        else {
          changes.push({ id: record.id, record });
          if (before === undefined) firstNew = Math.min(firstNew, index * RUN + slot);
        }
      }
    }
    return { changes: [...changes, ...gone], ordered: firstNew > lastOld };
  }

  get(id: RecordId): AtlasRecord | undefined {
    const at = this.#places.of.get(id);
    return at === undefined ? undefined : this.#runs[at >> BITS]?.[at & (RUN - 1)];
  }

  has(id: RecordId): boolean {
    return this.get(id) !== undefined;
  }

  forEach(visit: (record: AtlasRecord, id: RecordId, map: ReadonlyMap<RecordId, AtlasRecord>) => void): void {
    for (const record of this.values()) visit(record, record.id, this);
  }

  /** Those of one type in their order: quick however many there are of others. */
  ofType(type: AtlasRecord['type']): readonly AtlasRecord[] {
    const found: AtlasRecord[] = [];
    for (const run of this.#runs) {
      const own = byType(run).get(type);
      if (own !== undefined) for (const record of own) found.push(record);
    }
    return found;
  }

  *values(): Generator<AtlasRecord, undefined, unknown> {
    for (const run of this.#runs) for (const record of run) if (record !== undefined) yield record;
    return undefined;
  }

  *keys(): Generator<RecordId, undefined, unknown> {
    for (const { id } of this.values()) yield id;
    return undefined;
  }

  *entries(): Generator<[RecordId, AtlasRecord], undefined, unknown> {
    for (const record of this.values()) yield [record.id, record];
    return undefined;
  }

  [Symbol.iterator](): Generator<[RecordId, AtlasRecord], undefined, unknown> {
    return this.entries();
  }
}

/** The document after the changes, sharing with it all that they do not touch. */
export function changed({ records }: AtlasDocument, changes: Iterable<RecordChange>): AtlasDocument {
  const map = records instanceof RecordMap ? records : RecordMap.of(records.values());
  return { records: map.with(changes) };
}

/** The document as it can be handed to a worker: a copy is made on the way, which a class does not survive. */
export const posted = ({ records }: AtlasDocument): AtlasDocument => ({ records: new Map(records) });

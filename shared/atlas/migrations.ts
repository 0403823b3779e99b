import { ATLAS_FORMAT } from './schema.ts';

/** A record as found in an older file or journal: plain data, nothing promised yet but its `type` and `id`. */
export type RawRecord = Readonly<Record<string, unknown>>;

/** Raises records from format `from` to `from + 1`. Pure; never throws on odd input, which the schema refuses after. */
export interface Migration {
  readonly from: number;
  /** One line for the change log: what changed and why. */
  readonly change: string;
  readonly up: (records: readonly RawRecord[]) => readonly RawRecord[];
}

/** In order, one for each format ever released but the newest. Format 1 is the first. */
export const migrations: readonly Migration[] = [
  {
    from: 1,
    change:
      'New records: planes judged by eye, elevation grids, landmarks, and the sources of imported data. Those of format 1 stay as they are.',
    up: (records) => records,
  },
  {
    from: 2,
    change:
      'New records: pictures of the ground to trace over. New members: group and moisture of a ball, pin sheet of a flag and of a day. What format 2 holds stays as it is.',
    up: (records) => records,
  },
  {
    from: 3,
    change:
      'A pick belongs to the player who made it: old ones go to the player in use, the only one they were ever shown for. Without a player nobody can have made one, and nobody could see it.',
    up: (records) => {
      const playerId = playerInUse(records);
      return records.flatMap((record) =>
        record['type'] !== 'choice' ? [record] : playerId === null ? [] : [{ ...record, playerId }],
      );
    },
  },
];

/** Id of the player plans were made for: the one marked so, else the first by id. */
export function playerInUse(records: Iterable<RawRecord>): string | null {
  let found: RawRecord | null = null;
  for (const record of records) {
    if (record['type'] !== 'player') continue;
    if (found === null || before(record, found)) found = record;
  }
  return found === null ? null : String(found['id']);
}

function before(a: RawRecord, b: RawRecord): boolean {
  const [usedA, usedB] = [a['inUse'] === true, b['inUse'] === true];
  return usedA === usedB ? String(a['id']) < String(b['id']) : usedA;
}

/** Raises records of a known older format to the newest, one step at a time. */
export function migrate(
  records: readonly RawRecord[],
  from: number,
  to: number = ATLAS_FORMAT,
  steps: readonly Migration[] = migrations,
): readonly RawRecord[] {
  let raised = records;
  for (let format = from; format < to; format += 1) {
    const step = steps.find((migration) => migration.from === format);
    if (step === undefined) throw new RangeError(`no migration leads on from format ${String(format)}`);
    raised = step.up(raised);
  }
  return raised;
}

import type { Transaction } from 'dexie';
import { migrate, playerInUse, type RawRecord } from '../../shared/atlas/migrations.ts';

/** A base and its steps as they were kept before: plain data, nothing promised. */
interface OldBase {
  readonly atlasId: string;
  readonly records: readonly RawRecord[];
}
interface OldStep {
  readonly atlasId: string;
  readonly index: number;
  readonly changes: readonly { readonly id: string; readonly record: RawRecord | null }[];
}

/**
 * Raises a library of atlases of format 3. Each journal is gone through from its start, so that a pick goes to whoever was
 * the player in use when it was made.
 */
export async function givePicksTheirPlayer(opened: Transaction): Promise<void> {
  const bases = opened.table<OldBase>('bases');
  const steps = opened.table<OldStep>('steps');
  for (const atlasId of await bases.toCollection().primaryKeys()) {
    const base = await bases.get(atlasId);
    if (base === undefined) continue;
    await bases.put({ ...base, records: migrate(base.records, 3, 4) });
    const players = new Map<string, RawRecord>();
    for (const record of base.records)
      if (record['type'] === 'player') players.set(String(record['id']), record);
    const own = await steps.where('[atlasId+index]').between([atlasId, 0], [atlasId, Infinity]).toArray();
    for (const step of own) {
      for (const { id, record } of step.changes) {
        if (record?.['type'] === 'player') players.set(id, record);
        else players.delete(id);
      }
      const playerId = playerInUse(players.values());
      if (!step.changes.some(({ record }) => record?.['type'] === 'choice')) continue;
      const changes = step.changes.flatMap((change) =>
        change.record?.['type'] !== 'choice'
          ? [change]
          : playerId === null
            ? []
            : [{ ...change, record: { ...change.record, playerId } }],
      );
      await steps.put({ ...step, changes });
    }
  }
}

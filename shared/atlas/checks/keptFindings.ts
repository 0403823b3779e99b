import type { PlaneShape } from '../planeShape.ts';
import type { AtlasRecord, RecordId } from '../records.ts';
import type { Finding } from './finding.ts';

/** Records looked at between two breaths. */
const AT_ONCE = 40;

/** What was found of each record of a kind, kept until something that bears on it changes. */
export class KeptFindings {
  readonly #found = new Map<RecordId, readonly Finding[]>();
  readonly #due = new Set<RecordId>();

  /** The record has to be looked at again, or is gone. */
  due(id: RecordId): void {
    this.#due.add(id);
  }

  /** Looks at all that are due, with a breath now and then; whoever does not come back leaves the rest due. */
  *look(find: (id: RecordId) => readonly Finding[]): Generator<undefined, void> {
    let looked = 0;
    for (const id of this.#due) {
      const found = find(id);
      if (found.length > 0) this.#found.set(id, found);
      else this.#found.delete(id);
      this.#due.delete(id);
      looked += 1;
      if (looked % AT_ONCE === 0) yield;
    }
  }

  /** All there is, in the order of the records, each as `tell` words it. */
  inOrder<T extends AtlasRecord>(
    shapes: readonly PlaneShape<T>[],
    tell: (found: Finding, shape: PlaneShape<T>) => Finding,
  ): readonly Finding[] {
    const told: Finding[] = [];
    if (this.#found.size === 0) return told;
    for (const shape of shapes)
      for (const found of this.#found.get(shape.record.id) ?? []) told.push(tell(found, shape));
    return told;
  }
}

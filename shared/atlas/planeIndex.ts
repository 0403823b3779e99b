import { CellGrid } from '../geometry/cellGrid.ts';
import type { Box } from '../geometry/ring.ts';
import { headerOf } from './document.ts';
import { documentChanges, orderedChanges } from './documentChanges.ts';
import { type PlaneShape, planeShape } from './planeShape.ts';
import type { AreaRecord, AtlasDocument, AtlasRecord, LineRecord, RecordId, RecordOf } from './records.ts';

/** Records that lie at one place. */
export type PointRecord = Extract<AtlasRecord, { readonly at: unknown }>;

/** A record of the plane as a change found it and as it left it; null where there was or is none. */
export interface PlaneChange {
  readonly before: PlaneShape | null;
  readonly after: PlaneShape | null;
}

/** Cells about as large as what is looked for in them: a bunker, and the reach of a reading to its neighbours. */
const AREA_CELL_M = 20;
const POINT_CELL_M = 10;
const FEW_CHANGES = 50;

/**
 * A document's records by type and by where they lie. It follows the document from edit to edit: what did not change is not
 * touched, so that it costs little on an atlas of thousands of records. Lists keep the document's order.
 */
export class PlaneIndex {
  readonly #areas = new CellGrid<PlaneShape<AreaRecord>>(AREA_CELL_M);
  readonly #lines = new CellGrid<PlaneShape<LineRecord>>(AREA_CELL_M);
  readonly #points = new CellGrid<PlaneShape<PointRecord>>(POINT_CELL_M);
  readonly #lists = new Map<AtlasRecord['type'], readonly PlaneShape[]>();
  #document: AtlasDocument | null = null;

  /** Goes to a document and says what is different from the one before; everything at first, and after another anchor. */
  moveTo(document: AtlasDocument): readonly PlaneChange[] {
    const before = this.#document;
    if (before === document) return [];
    this.#document = document;
    if (before === null || headerOf(before).anchor !== headerOf(document).anchor) return this.#all(document);
    const ordered = orderedChanges(before, document);
    const made = (ordered ?? documentChanges(before, document)).map(({ id, record }): PlaneChange => {
      const old = before.records.get(id);
      return {
        before: old === undefined ? null : planeShape(before, old),
        after: record === null ? null : planeShape(document, record),
      };
    });
    this.#change(document, made, ordered !== null);
    return made;
  }

  /** Every record of one type, in the document's order. */
  of<T extends AtlasRecord['type']>(type: T): readonly PlaneShape<RecordOf<T>>[] {
    // A list holds the shapes of the records of its type and no others.
    return (this.#lists.get(type) ?? []) as readonly PlaneShape<RecordOf<T>>[];
  }

  areasIn(box: Box): readonly PlaneShape<AreaRecord>[] {
    return this.#areas.within(box);
  }

  linesIn(box: Box): readonly PlaneShape<LineRecord>[] {
    return this.#lines.within(box);
  }

  pointsIn(box: Box): readonly PlaneShape<PointRecord>[] {
    return this.#points.within(box);
  }

  #all(document: AtlasDocument): readonly PlaneChange[] {
    const old = [...this.#lists.values()].flat();
    this.#areas.clear();
    this.#lines.clear();
    this.#points.clear();
    this.#lists.clear();
    const lists = new Map<AtlasRecord['type'], PlaneShape[]>();
    const made: PlaneChange[] = old.map((before) => ({ before, after: null }));
    for (const record of document.records.values()) {
      const after = planeShape(document, record);
      const list = lists.get(record.type);
      if (list === undefined) lists.set(record.type, [after]);
      else list.push(after);
      this.#put(after);
      made.push({ before: null, after });
    }
    for (const [type, list] of lists) this.#lists.set(type, list);
    return made;
  }

  #change(document: AtlasDocument, changes: readonly PlaneChange[], ordered: boolean): void {
    if (ordered && changes.length <= FEW_CHANGES) {
      this.#changeFew(changes);
      return;
    }
    const byType = new Map<AtlasRecord['type'], Map<RecordId, PlaneShape | null>>();
    const note = ({ record }: PlaneShape, now: PlaneShape | null): void => {
      const own = byType.get(record.type) ?? new Map<RecordId, PlaneShape | null>();
      byType.set(record.type, own.set(record.id, now));
    };
    for (const { before, after } of changes) {
      if (before !== null) {
        this.#take(before);
        note(before, null);
      }
      if (after !== null) {
        this.#put(after);
        note(after, after);
      }
    }
    for (const [type, own] of byType) {
      const list: PlaneShape[] = [];
      if (!ordered) {
        for (const record of document.records.values())
          if (record.type === type) list.push(planeShape(document, record));
        this.#lists.set(type, list);
        continue;
      }
      for (const shape of this.#lists.get(type) ?? []) {
        const now = own.get(shape.record.id);
        if (now === undefined) list.push(shape);
        else if (now !== null) list.push(now);
        own.delete(shape.record.id);
      }
      for (const added of own.values()) if (added !== null) list.push(added);
      this.#lists.set(type, list);
    }
  }

  /** The same for a handful: shapes are found in their lists by being themselves, which is far quicker than by their ids. */
  #changeFew(changes: readonly PlaneChange[]): void {
    const lists = new Map<AtlasRecord['type'], PlaneShape[]>();
    const listOf = (type: AtlasRecord['type']): PlaneShape[] => {
      const list = lists.get(type) ?? [...(this.#lists.get(type) ?? [])];
      lists.set(type, list);
      return list;
    };
    for (const { before, after } of changes) {
      const stays = before !== null && before.record.type === after?.record.type;
      if (before !== null) {
        this.#take(before);
        const list = listOf(before.record.type);
        list.splice(list.indexOf(before), 1, ...(stays ? [after] : []));
      }
      if (after !== null) {
        this.#put(after);
        if (!stays) listOf(after.record.type).push(after);
      }
    }
    for (const [type, list] of lists) this.#lists.set(type, list);
  }

  #put(shape: PlaneShape): void {
    if (isShapeOf(shape, 'area')) this.#areas.add(shape);
    else if (isShapeOf(shape, 'line')) this.#lines.add(shape);
    else if (isPointShape(shape)) this.#points.add(shape);
  }

  #take(shape: PlaneShape): void {
    if (isShapeOf(shape, 'area')) this.#areas.remove(shape);
    else if (isShapeOf(shape, 'line')) this.#lines.remove(shape);
    else if (isPointShape(shape)) this.#points.remove(shape);
  }
}

/** Narrows a shape by the type of its record. */
export const isShapeOf = <T extends AtlasRecord['type']>(
  shape: PlaneShape,
  type: T,
): shape is PlaneShape<RecordOf<T>> => shape.record.type === type;

const isPointShape = (shape: PlaneShape): shape is PlaneShape<PointRecord> => 'at' in shape.record;

import { localFrame, type LocalFrame } from '../geometry/localFrame.ts';
import type { LonLat, PlanePolygon } from '../geometry/points.ts';
import { canonicalRecord } from './canonical.ts';
import { RecordMap } from './recordMap.ts';
import type { AtlasDocument, AtlasHeader, AtlasRecord, RecordId, RecordOf, Rings } from './records.ts';

/** A document of these records, each in its canonical spelling. Later records replace earlier ones of the same id. */
export function atlasDocument(records: Iterable<AtlasRecord>): AtlasDocument {
  const map = RecordMap.of(Array.from(records, canonicalRecord));
  if (map.get('atlas')?.type !== 'atlas') throw new RangeError('a document needs its header record');
  return { records: map };
}

export function headerOf(document: AtlasDocument): AtlasHeader {
  const header = document.records.get('atlas');
  if (header?.type !== 'atlas') throw new RangeError('a document needs its header record');
  return header;
}

export function recordsOf<T extends AtlasRecord['type']>(
  document: AtlasDocument,
  type: T,
): readonly RecordOf<T>[] {
  const { records } = document;
  // What is kept by type holds records of that type and no others.
  if (records instanceof RecordMap) return records.ofType(type) as readonly RecordOf<T>[];
  const found: RecordOf<T>[] = [];
  for (const record of records.values()) if (isOfType(record, type)) found.push(record);
  return found;
}

/** The day, or the player, that plans are made for: the one marked so, else the first by id. */
export function inUseOf<T extends 'conditions' | 'player'>(
  document: AtlasDocument,
  type: T,
): RecordOf<T> | undefined {
  const all: readonly RecordOf<T>[] = recordsOf(document, type).toSorted(compareIds);
  return all.find((record: RecordOf<'conditions' | 'player'>) => record.inUse) ?? all[0];
}

/** The record of this id if it is of this type, else undefined. */
export function findRecord<T extends AtlasRecord['type']>(
  document: AtlasDocument,
  type: T,
  id: RecordId,
): RecordOf<T> | undefined {
  const record = document.records.get(id);
  return record !== undefined && isOfType(record, type) ? record : undefined;
}

/** Holes or stations in the order of play. */
export function holesInOrder(document: AtlasDocument): readonly RecordOf<'hole'>[] {
  return recordsOf(document, 'hole').toSorted((a, b) => a.order - b.order || compareIds(a, b));
}

const frames = new WeakMap<LonLat, LocalFrame>();

/** The document's plane, made once for an anchor. */
export function frameOf(document: AtlasDocument): LocalFrame {
  const { anchor } = headerOf(document);
  const known = frames.get(anchor);
  if (known !== undefined) return known;
  const made = localFrame(anchor);
  frames.set(anchor, made);
  return made;
}

export function planePolygon(frame: LocalFrame, rings: Rings): PlanePolygon {
  return rings.map((ring) => ring.map(frame.toPlane));
}

/** Equal in every record, whatever the order they are kept in. */
export function sameDocument(a: AtlasDocument, b: AtlasDocument): boolean {
  if (a.records.size !== b.records.size) return false;
  for (const [id, record] of a.records) {
    const other = b.records.get(id);
    if (other !== record && (other === undefined || !sameValue(record, other))) return false;
  }
  return true;
}

/** By code unit: the same on every machine, which a collator is not. */
export function compareIds(a: { readonly id: string }, b: { readonly id: string }): number {
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

function isOfType<T extends AtlasRecord['type']>(record: AtlasRecord, type: T): record is RecordOf<T> {
  return record.type === type;
}

/** Deep equality of plain data, blind to the order of members. */
function sameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b))
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((value, i) => sameValue(value, b[i]))
    );
  const left = Object.entries(a);
  return (
    left.length === Object.keys(b).length &&
    left.every(
      ([key, value]) => Object.hasOwn(b, key) && sameValue(value, (b as Record<string, unknown>)[key]),
    )
  );
}

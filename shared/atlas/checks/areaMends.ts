import type { PlanePolygon } from '../../geometry/points.ts';
import { polygonAreaM2 } from '../../geometry/ring.ts';
import { differenceOf, untangled } from '../../geometry/topology.ts';
import { kindWords } from '../../words/coverWords.ts';
import { frameOf } from '../document.ts';
import { type Edit, putRecords } from '../edits.ts';
import type { AreaRecord, AtlasDocument, RecordId } from '../records.ts';
import type { AreaShape } from './survey.ts';

/** Parts smaller than this are no ground. */
export const SLIVER_M2 = 0.05;

export const named = ({ kind, name }: AreaRecord): string => (name === '' ? `a ${kindWords[kind]}` : name);

const largestFirst = (parts: readonly PlanePolygon[]): readonly PlanePolygon[] =>
  parts
    .filter((part) => polygonAreaM2(part) >= SLIVER_M2)
    .toSorted((a, b) => polygonAreaM2(b) - polygonAreaM2(a));

/** The crossing ring with only the largest of the parts it falls into; a hole beyond that part goes with the rest. */
export function untangle({ record, polygon }: AreaShape, ring: number): Edit {
  const annotation = `untangled ${named(record)}`;
  return {
    annotation,
    apply: (document) => {
      const crossing = polygon[ring];
      const largest = crossing === undefined ? undefined : untangled(crossing)[0]?.[0];
      if (largest === undefined) return document;
      const kept =
        ring > 0
          ? polygon.map((other, i) => (i === ring ? largest : other))
          : polygon
              .slice(1)
              .reduce<PlanePolygon>(
                (whole, hole) => largestFirst(differenceOf(whole, [hole]))[0] ?? whole,
                [largest],
              );
      return putRecords(annotation, shaped(document, record, [kept])).apply(document);
    },
  };
}

/** What another area leaves of this one, every part of it; null where nothing is left. */
export function trim({ record, polygon }: AreaShape, by: AreaShape): Edit | null {
  const parts = largestFirst(differenceOf(polygon, by.polygon));
  if (parts.length === 0) return null;
  const annotation = `trimmed ${named(record)}`;
  return {
    annotation,
    apply: (document) => putRecords(annotation, shaped(document, record, parts)).apply(document),
  };
}

/** The area in the shape of the first part, and areas like it of the others. */
function shaped(
  document: AtlasDocument,
  record: AreaRecord,
  parts: readonly PlanePolygon[],
): readonly AreaRecord[] {
  const { toLonLat } = frameOf(document);
  const taken = new Set<RecordId>(document.records.keys());
  return parts.map((part, i) => {
    const rings = part.map((ring) => ring.map(toLonLat));
    if (i === 0) return { ...record, rings };
    let number = 2;
    while (taken.has(`${record.id}-${String(number)}`)) number += 1;
    const id = `${record.id}-${String(number)}`;
    taken.add(id);
    return { ...record, id, name: '', rings };
  });
}

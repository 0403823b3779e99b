import { polygonAreaM2 } from '../../geometry/ring.ts';
import { differenceOf, overlapOf, untangled } from '../../geometry/topology.ts';
import type { PlanePolygon } from '../../geometry/points.ts';
import { kindWords } from '../../words/coverWords.ts';
import { type Edit, putRecords, removeRecords } from '../edits.ts';
import type { AreaRecord } from '../records.ts';
import { finding, type Finding } from './finding.ts';
import { areaPlace, type AreaShape, boxesMeet, type Survey } from './survey.ts';

/** Overlaps smaller than this are a shared edge traced twice. */
const OVERLAP_M2 = 0.05;
const SLIVER_M2 = 0.05;
/** What a bunker is planned with until its lip is measured. */
const USUAL_LIP_M = 0.3;

export function areaChecks(survey: Survey): readonly Finding[] {
  return [
    ...survey.areas.flatMap((area) => crossing(survey, area)),
    ...overlappingGreens(survey),
    ...survey.areas.flatMap((area) => missingMeasures(survey, area)),
    ...survey.areas.flatMap((area) => sliver(survey, area)),
  ];
}

function crossing(survey: Survey, area: AreaShape): readonly Finding[] {
  if (area.crossing === null) return [];
  const { record, polygon } = area;
  const { ring, crossing: found } = area.crossing;
  const mend: Edit = {
    annotation: `untangled ${named(record)}`,
    apply: (document) => {
      const outer = polygon[ring];
      const largest = outer === undefined ? undefined : untangled(outer)[0]?.[0];
      if (largest === undefined) return document;
      const rings = polygon.map((kept, i) => (i === ring ? largest : kept));
      return replaced(survey, record, rings, `untangled ${named(record)}`).apply(document);
    },
  };
  return [
    finding('self-crossing', 'error', [record.id], {
      place: areaPlace(survey, area),
      at: survey.frame.toLonLat(found.at),
      what: 'The outline crosses itself.',
      remedy: 'Move a corner there, or keep the largest part.',
      mend,
    }),
  ];
}

function overlappingGreens(survey: Survey): readonly Finding[] {
  const greens = survey.areas.filter(({ record, crossing: bad }) => record.kind === 'green' && bad === null);
  return greens.flatMap((first, i) =>
    greens.slice(i + 1).flatMap((second) => {
      if (!boxesMeet(first.box, second.box)) return [];
      const shared = overlapOf(first.polygon, second.polygon);
      if (shared.reduce((sum, part) => sum + polygonAreaM2(part), 0) < OVERLAP_M2) return [];
      const left = differenceOf(second.polygon, first.polygon)[0];
      return [
        finding('overlapping-greens', 'error', [first.record.id, second.record.id], {
          place: areaPlace(survey, second),
          at: survey.frame.toLonLat(second.centre),
          what: `The green overlaps ${named(first.record)}.`,
          remedy: 'Trim one of them, or join them into one green.',
          mend:
            left === undefined
              ? null
              : replaced(survey, second.record, left, `trimmed ${named(second.record)}`),
        }),
      ];
    }),
  );
}

function missingMeasures(survey: Survey, area: AreaShape): readonly Finding[] {
  const { record, centre } = area;
  const place = areaPlace(survey, area);
  const at = survey.frame.toLonLat(centre);
  if (record.kind === 'bunker' && record.lipHeightM === null)
    return [
      finding('bunker-without-lip', 'warning', [record.id], {
        place,
        at,
        what: 'The lip has no height.',
        remedy: 'Measure it from the sand; 1 ft is taken until then.',
        mend: putRecords(`gave ${named(record)} a lip of 1 ft`, [{ ...record, lipHeightM: USUAL_LIP_M }]),
      }),
    ];
  if (record.kind === 'tree' && record.treeHeightM === null)
    return [
      finding('tree-without-height', 'warning', [record.id], {
        place,
        at,
        what: 'The tree has no height.',
        remedy: 'Give its height and the underside of its crown.',
      }),
    ];
  if (record.treeHeightM !== null && (record.canopyBaseM ?? 0) >= record.treeHeightM)
    return [
      finding('crown-above-tree', 'error', [record.id], {
        place,
        at,
        what: 'The underside of the crown is as high as the tree.',
        remedy: 'Correct one of the two heights.',
      }),
    ];
  return [];
}

function sliver(survey: Survey, area: AreaShape): readonly Finding[] {
  if (area.crossing !== null || polygonAreaM2(area.polygon) >= SLIVER_M2) return [];
  return [
    finding('sliver', 'warning', [area.record.id], {
      place: areaPlace(survey, area),
      at: survey.frame.toLonLat(area.centre),
      what: 'The area is smaller than a hand.',
      remedy: 'Take it out if it is a slip.',
      mend: removeRecords(`took out ${named(area.record)}`, [area.record.id]),
    }),
  ];
}

function named({ kind, name }: AreaRecord): string {
  return name === '' ? `a ${kindWords[kind]}` : name;
}

function replaced(survey: Survey, record: AreaRecord, polygon: PlanePolygon, annotation: string): Edit {
  return putRecords(annotation, [
    { ...record, rings: polygon.map((ring) => ring.map((point) => survey.frame.toLonLat(point))) },
  ]);
}

import { holesInOrder } from '../../atlas/document.ts';
import type { AtlasDocument } from '../../atlas/records.ts';
import { escapeXml, refuseUnplaced, titleOf } from './mapExport.ts';
import { flagsAndBalls } from './mapItems.ts';

/** GPX 1.1 waypoints of flags and balls, to find them on the ground again. @throws InputProblem for an unplaced atlas */
export function writeGpx(document: AtlasDocument, holeId: string | null = null): string {
  refuseUnplaced(document, 'GPX');
  const { name, credits } = titleOf(document);
  const holes = holesInOrder(document).filter(({ id }) => holeId === null || id === holeId);
  const points = flagsAndBalls(document, new Map(holes.map(({ id, label }) => [id, label])));
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Swale" xmlns="http://www.topografix.com/GPX/1/1">',
    `<metadata><name>${escapeXml(name)}</name>${credits === '' ? '' : `<desc>${escapeXml(credits)}</desc>`}</metadata>`,
    ...points.flatMap(({ name: label, properties, geometry }) => {
      if (geometry.type !== 'Point') return [];
      const [lon, lat] = geometry.at;
      const note = properties['note'];
      return [
        `<wpt lat="${String(lat)}" lon="${String(lon)}"><name>${escapeXml(label)}</name>${note === undefined ? '' : `<desc>${escapeXml(String(note))}</desc>`}</wpt>`,
      ];
    }),
    '</gpx>',
    '',
  ].join('\n');
}

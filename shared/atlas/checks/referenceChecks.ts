import { type Edit, putRecords, removeRecords } from '../edits.ts';
import type { AtlasRecord, RecordId, RecordOf } from '../records.ts';
import { finding, type Finding } from './finding.ts';
import { holeName, type Survey } from './survey.ts';

/** Every id that a record names must be there. Edits keep it so; a foreign or damaged journal may not. */
export function referenceChecks({ document, index }: Survey): readonly Finding[] {
  const has = (id: RecordId, fits: (record: AtlasRecord) => boolean): boolean => {
    const record = document.records.get(id);
    return record !== undefined && fits(record);
  };
  const all = <T extends AtlasRecord['type']>(type: T): readonly RecordOf<T>[] =>
    index.of(type).map(({ record }) => record);
  const unknown = (record: AtlasRecord, place: string, named: RecordId, mend: Edit): Finding =>
    finding('unknown-reference', 'error', [record.id, named], {
      place,
      at: null,
      what: `It names "${named}", which is not there or is something else.`,
      remedy: 'Choose one that is there, or take it out.',
      mend,
    });
  return [
    ...all('hole').flatMap((hole) =>
      hole.greenId === null || has(hole.greenId, (found) => found.type === 'area' && found.kind === 'green')
        ? []
        : [
            unknown(
              hole,
              holeName(document, hole),
              hole.greenId,
              putRecords('let go of a missing green', [{ ...hole, greenId: null }]),
            ),
          ],
    ),
    ...[...all('holeLocation'), ...all('ballPosition')].flatMap((record) =>
      has(record.holeId, (found) => found.type === 'hole')
        ? []
        : [
            unknown(
              record,
              `${record.type === 'holeLocation' ? 'Flag' : 'Ball'} ${record.label}`,
              record.holeId,
              removeRecords(`took out ${record.type === 'holeLocation' ? 'flag' : 'ball'} ${record.label}`, [
                record.id,
              ]),
            ),
          ],
    ),
    ...all('choice').flatMap((choice) => {
      const missing = !has(choice.ballId, (found) => found.type === 'ballPosition')
        ? choice.ballId
        : !has(choice.flagId, (found) => found.type === 'holeLocation')
          ? choice.flagId
          : !has(choice.playerId, (found) => found.type === 'player')
            ? choice.playerId
            : null;
      return missing === null
        ? []
        : [
            unknown(
              choice,
              `Choice ${choice.id}`,
              missing,
              removeRecords('took out a choice for nothing', [choice.id]),
            ),
          ];
    }),
  ];
}

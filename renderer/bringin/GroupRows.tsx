import { isWithout } from '../../shared/formats/import/applyImport.ts';
import type {
  ImportGroup,
  ImportPreview,
  ImportSelection,
} from '../../shared/formats/import/importPreview.ts';
import { kindWords } from '../../shared/words/coverWords.ts';
import { areaKinds } from '../../shared/words/vocabulary.ts';
import type { BringIn, Brought } from './bringIn.ts';

interface GroupRowsProps {
  readonly preview: ImportPreview;
  readonly file: Brought;
  readonly bringIn: BringIn;
}

const pointKinds = [
  ['ballPosition', 'ball position'],
  ['holeLocation', 'hole location'],
  ['landmark', 'landmark'],
] as const;
const LEAVE_OUT = 'leave out';
const AS_IT_IS = 'as it is';

/** What would come in, group by group, and as what: each can be another kind, or stay out. */
export function GroupRows({ preview, file, bringIn }: GroupRowsProps): React.JSX.Element {
  const { selection, key } = file;
  if (preview.groups.length === 0) return <p>Nothing in it can be brought in.</p>;
  return (
    <table className="bringin-groups">
      <caption className="unseen">What comes in, and as what</caption>
      <thead>
        <tr>
          <th scope="col">In the file</th>
          <th scope="col">Comes in as</th>
        </tr>
      </thead>
      <tbody>
        {preview.groups.map((group) => (
          <tr key={group.key} className={isWithout(group.key, selection) ? 'out' : undefined}>
            <th scope="row">
              {group.records.length.toLocaleString('en')} {group.title}
              {group.from !== '' && <span className="hint">, {group.from}</span>}
              <span className="hint how">{group.how}</span>
            </th>
            <td>
              <select
                aria-label={`${group.title}${group.from === '' ? '' : `, ${group.from}`}: comes in as`}
                value={valueOf(group, selection)}
                onChange={({ target }) => bringIn.setSelection(key, chosenAs(group, selection, target.value))}
              >
                {choicesFor(group).map(([value, words]) => (
                  <option key={value} value={value}>
                    {words}
                  </option>
                ))}
              </select>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function choicesFor({ records }: ImportGroup): readonly (readonly [value: string, words: string])[] {
  const out = [LEAVE_OUT, 'leave out'] as const;
  const type = records[0]?.type;
  if (type === 'area') return [...areaKinds.map((kind) => [kind, kindWords[kind]] as const), out];
  if (type === 'ballPosition' || type === 'holeLocation') return [...pointKinds, out];
  return [[AS_IT_IS, 'what they are'], out];
}

function valueOf(group: ImportGroup, selection: ImportSelection): string {
  if (isWithout(group.key, selection)) return LEAVE_OUT;
  const [record] = group.records;
  if (record?.type === 'area') return selection.areaKinds?.[group.key] ?? record.kind;
  if (record?.type === 'ballPosition' || record?.type === 'holeLocation')
    return selection.pointKinds?.[group.key] ?? record.type;
  return AS_IT_IS;
}

function chosenAs({ key }: ImportGroup, selection: ImportSelection, value: string): Partial<ImportSelection> {
  const without = new Set(selection.without);
  if (value === LEAVE_OUT) without.add(key);
  else without.delete(key);
  const kind = areaKinds.find((one) => one === value);
  const point = pointKinds.find(([one]) => one === value)?.[0];
  return {
    without,
    ...(kind !== undefined && { areaKinds: { ...selection.areaKinds, [key]: kind } }),
    ...(point !== undefined && { pointKinds: { ...selection.pointKinds, [key]: point } }),
  };
}

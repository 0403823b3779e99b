import type { FileFormat } from '../../shared/formats/import/fileFormat.ts';
import type { HeightUnit, ImportPreview } from '../../shared/formats/import/importPreview.ts';
import { MARGIN_M } from '../../shared/formats/raster/clipBoxes.ts';
import { inchesFromMetres, yardsFromMetres } from '../../shared/units/conversions.ts';
import { distance, withUnit } from '../../shared/units/format.ts';
import { parseLength } from '../../shared/units/parse.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';
import type { PlainProblem } from '../workers/plainProblem.ts';
import type { BringIn, Brought } from './bringIn.ts';
import { CheckedField } from './CheckedField.tsx';

interface HeightFieldsProps {
  readonly file: Brought;
  readonly bringIn: BringIn;
  readonly units: UnitsPreference;
  readonly format: FileFormat | null;
  readonly preview: ImportPreview | null;
  readonly problem: PlainProblem | null;
}

const heightUnits: readonly (readonly [HeightUnit, string])[] = [
  ['m', 'metres'],
  ['ft', 'feet'],
  ['usft', 'US survey feet'],
];
const asksCrs: ReadonlySet<string> = new Set([
  'missing-projection',
  'unknown-projection',
  'position-out-of-range',
  'position-far-away',
  'grid-elsewhere',
]);

/** What the heights of a file are: their unit, how sure they are, where they lie, how far round the greens they are kept. */
export function HeightFields(props: HeightFieldsProps): React.JSX.Element | null {
  const { file, bringIn, units, format, preview, problem } = props;
  const { key, options } = file;
  const grid = format === 'geotiff' || format === 'asciiGrid';
  const list = format === 'csv';
  const heights = preview?.groups.some((group) => group.key === 'spotHeight') === true;
  if (!grid && !list && !heights) return null;
  const accuracy = options.accuracyM ?? accuracyIn(preview);
  const wantsCrs =
    grid || (list && (options.crs !== undefined || (problem !== null && asksCrs.has(problem.code))));
  const small = units.system === 'yards' ? 'in' : 'cm';
  const large = units.system === 'yards' ? 'yd' : 'm';
  const length = (typed: string, bare: 'cm' | 'in' | 'm' | 'yd', what: string, most: number): number => {
    const value = parseLength(typed, bare, units.paceM, what);
    if (!(value > 0) || value > most)
      throw new InputProblem(
        'out-of-range',
        'It must be above nothing and reasonable.',
        what,
        `Give at most ${withUnit(distance(most, units))}.`,
      );
    return value;
  };
  return (
    <div className="bringin-fields">
      {(grid || list) && (
        <label>
          <span>Heights are in</span>
          <select
            value={options.heightUnit ?? ''}
            onChange={({ target }) =>
              bringIn.setOptions(key, {
                heightUnit: heightUnits.find(([unit]) => unit === target.value)?.[0] ?? null,
              })
            }
          >
            <option value="">what the file says, or metres</option>
            {heightUnits.map(([unit, words]) => (
              <option key={unit} value={unit}>
                {words}
              </option>
            ))}
          </select>
        </label>
      )}
      {(heights || grid) && (
        <CheckedField
          label="Good to ±"
          unit={small === 'in' ? 'inches' : small}
          value={accuracy === null ? '' : smallLength(accuracy, units)}
          commit={(typed) => bringIn.setOptions(key, { accuracyM: length(typed, small, 'Good to ±', 10) })}
        />
      )}
      {wantsCrs && (
        <CheckedField
          label="Map projection"
          value={options.crs ?? ''}
          commit={(typed) => bringIn.setOptions(key, { crs: typed === '' ? null : typed })}
        />
      )}
      {wantsCrs && (
        <p className="hint">
          An EPSG code such as EPSG:27700, or PROJ’s text for it. Left empty,{' '}
          {grid ? 'the file says' : 'metres count from the grid of this atlas'}.
        </p>
      )}
      {grid && (
        <CheckedField
          label="Kept round each green"
          unit={large}
          value={marginTyped(options.marginM ?? MARGIN_M, units)}
          commit={(typed) => bringIn.setOptions(key, { marginM: length(typed, large, 'Margin', 200) })}
        />
      )}
      {grid && (
        <label className="choice">
          <input
            type="checkbox"
            checked={options.matchDatum ?? true}
            onChange={({ target }) => bringIn.setOptions(key, { matchDatum: target.checked })}
          />{' '}
          Shift it to meet the spot heights on the same ground
        </label>
      )}
    </div>
  );
}

/** An accuracy in inches or centimetres, as it is typed. */
const smallLength = (lengthM: number, { system }: UnitsPreference): string =>
  String(Number((system === 'yards' ? inchesFromMetres(lengthM) : lengthM * 100).toFixed(2)));

/** A margin in yards or metres, as it is typed. */
const marginTyped = (lengthM: number, { system }: UnitsPreference): string =>
  String(Number((system === 'yards' ? yardsFromMetres(lengthM) : lengthM).toFixed(1)));

/** The accuracy that all heights of a file share; null where they differ or there are none. */
function accuracyIn(preview: ImportPreview | null): number | null {
  const all = new Set(
    (preview?.groups ?? []).flatMap(({ records }) =>
      records.flatMap((record) =>
        record.type === 'spotHeight' || record.type === 'elevationGrid' ? [record.accuracyM] : [],
      ),
    ),
  );
  const [only] = all;
  return all.size === 1 ? (only ?? null) : null;
}

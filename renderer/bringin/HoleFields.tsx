import { headerOf, holesInOrder } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { asChosen, isWithout } from '../../shared/formats/import/applyImport.ts';
import type { ImportPreview } from '../../shared/formats/import/importPreview.ts';
import { holeWords } from '../ui/words.ts';
import type { BringIn, Brought } from './bringIn.ts';

interface HoleFieldsProps {
  readonly document: AtlasDocument;
  readonly preview: ImportPreview;
  readonly file: Brought;
  readonly bringIn: BringIn;
}

/** Which hole or station a lone green, and flags and balls without a name, go to. Nothing where there is no question. */
export function HoleFields({ document, preview, file, bringIn }: HoleFieldsProps): React.JSX.Element | null {
  const { selection, options, key } = file;
  const holes = holesInOrder(document);
  const one = headerOf(document).kind === 'practiceGround' ? 'station' : 'hole';
  const records = preview.groups
    .filter((group) => !isWithout(group.key, selection))
    .flatMap((group) => asChosen(document, group, selection));
  const taken = new Set(records.map(({ id }) => id));
  const bare = holes.filter(({ id, greenId }) => greenId === null && !taken.has(id));
  const claimed = new Set(records.map((record) => (record.type === 'hole' ? record.greenId : null)));
  const greens = records.filter((record) => record.type === 'area' && record.kind === 'green');
  const [green] = greens;
  const points =
    records.some(({ type }) => type === 'holeLocation' || type === 'ballPosition') ||
    preview.leftOut.some(({ what }) => what === 'points by no hole');
  const asksGreen = green !== undefined && greens.length === 1 && !claimed.has(green.id) && bare.length > 0;
  if (!asksGreen && !(points && holes.length > 0)) return null;
  return (
    <div className="bringin-fields">
      {asksGreen && (
        <label>
          <span>The green is that of</span>
          <select
            value={selection.greenOfHole ?? ''}
            onChange={({ target }) => bringIn.setSelection(key, { greenOfHole: target.value })}
          >
            <option value="">no {one} yet</option>
            {bare.map(({ id, label, name }) => (
              <option key={id} value={id}>
                {holeWords(label, name)}
              </option>
            ))}
          </select>
        </label>
      )}
      {points && (
        <label>
          <span>Flags and balls go to</span>
          <select
            value={options.holeId ?? ''}
            onChange={({ target }) => bringIn.setOptions(key, { holeId: target.value })}
          >
            <option value="">the {one} they name, or the nearest green</option>
            {holes.map(({ id, label, name }) => (
              <option key={id} value={id}>
                {holeWords(label, name)}, where they name none
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
}

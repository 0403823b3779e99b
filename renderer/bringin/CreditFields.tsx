import type { ImportPreview } from '../../shared/formats/import/importPreview.ts';
import { TextField } from '../ui/TextField.tsx';
import type { BringIn, Brought } from './bringIn.ts';

interface CreditFieldsProps {
  readonly preview: ImportPreview;
  readonly file: Brought;
  readonly bringIn: BringIn;
}

/** Whose data it is and on what terms: kept with the atlas and printed with what is made of it. */
export function CreditFields({ preview, file, bringIn }: CreditFieldsProps): React.JSX.Element {
  const { attribution, licence } = { ...preview.source, ...file.selection.credit };
  const put = (change: { readonly attribution?: string; readonly licence?: string }): void =>
    bringIn.setSelection(file.key, { credit: { attribution, licence, ...change } });
  return (
    <div className="bringin-fields">
      <label>
        <span>Owner to be named</span>
        <TextField value={attribution} commit={(text) => put({ attribution: text.slice(0, 1000) })} />
      </label>
      <label>
        <span>Licence</span>
        <TextField value={licence} commit={(text) => put({ licence: text.slice(0, 1000) })} />
      </label>
      {attribution === '' && licence === '' && (
        <p className="hint">The file names no owner and no licence: make sure you may use it.</p>
      )}
    </div>
  );
}

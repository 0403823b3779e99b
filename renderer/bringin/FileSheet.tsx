import { useMemo } from 'react';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { ImportPreview } from '../../shared/formats/import/importPreview.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { placeFirst } from '../store/arrivals.ts';
import { Drawing } from '../ui/drawing.tsx';
import { Trouble } from '../ui/Trouble.tsx';
import { useMatch } from '../ui/useMatch.ts';
import type { BringIn, Brought } from './bringIn.ts';
import { ColumnChooser } from './ColumnChooser.tsx';
import { CreditFields } from './CreditFields.tsx';
import { GroupRows } from './GroupRows.tsx';
import { HeightFields } from './HeightFields.tsx';
import { HoleFields } from './HoleFields.tsx';
import { importPicture } from './importPicture.ts';

export interface FileSheetProps {
  readonly file: Brought;
  readonly document: AtlasDocument;
  readonly units: UnitsPreference;
  readonly bringIn: BringIn;
}

const PICTURE = { width: 420, height: 360 };
const SMALL_PICTURE = { width: 340, height: 300 };

/** One file: a picture of what it would bring, what each thing comes in as, and what is left out and why. */
export function FileSheet(props: FileSheetProps): React.JSX.Element {
  const { file, bringIn } = props;
  const { reading, source } = file;
  switch (reading.at) {
    case 'waiting':
    case 'reading':
      return (
        <div className="bringin-reading" role="status">
          <label htmlFor="bringin-progress">Reading {source.fileName}</label>
          <progress id="bringin-progress" max={1} value={reading.at === 'reading' ? reading.share : 0} />
          <button type="button" className="link-button" onClick={() => bringIn.cancel()}>
            Stop reading
          </button>
        </div>
      );
    case 'given up':
      return (
        <div className="bringin-reading">
          <p>{source.fileName} was not read to its end.</p>
          <button type="button" className="link-button" onClick={() => bringIn.again(file.key)}>
            Read it again
          </button>
        </div>
      );
    case 'read': {
      const { preview, problem, csv, format } = reading.answer;
      return (
        <>
          {problem !== null && <Trouble trouble={{ message: problem.message, remedy: problem.remedy }} />}
          {problem?.code === 'atlas-unplaced' && (
            <button
              type="button"
              className="link-button"
              onClick={() => placeFirst(bringIn.store.getState().files)}
            >
              Place it on the earth
            </button>
          )}
          {csv !== null && (
            <ColumnChooser csv={csv} choose={(columns) => bringIn.setOptions(file.key, { columns })} />
          )}
          {preview !== null ? (
            <Preview {...props} preview={preview} />
          ) : (
            <div className="bringin-said">
              <HeightFields {...props} format={format} preview={null} problem={problem} />
            </div>
          )}
        </>
      );
    }
  }
}

function Preview(props: FileSheetProps & { readonly preview: ImportPreview }): React.JSX.Element {
  const { file, units, bringIn, preview } = props;
  const { selection, key } = file;
  const format = file.reading.at === 'read' ? file.reading.answer.format : null;
  const size = useMatch('(max-width: 1199px)') ? SMALL_PICTURE : PICTURE;
  // A new preview is read against a new document, and only then.
  const { before, picture } = useMemo(() => {
    const document = bringIn.before(key);
    return { before: document, picture: importPicture(document, preview, selection, size, units) };
  }, [bringIn, key, preview, selection, size, units]);
  return (
    <div className="bringin-sheet">
      <figure className="bringin-picture">
        <Drawing node={picture} label={`Map of what ${preview.fileName} would bring in`} />
        <figcaption>
          <span className="key-in" aria-hidden /> blue comes in, <span className="key-out" aria-hidden />{' '}
          dashed is left out, the rest is there now
          {preview.header !== null && '. The atlas takes its place on the earth from this file'}
        </figcaption>
      </figure>
      <div className="bringin-said">
        <h3>
          {preview.fileName} <span className="hint">{preview.format}</span>
        </h3>
        {preview.warnings.map(({ code, text }) => (
          <div className="bringin-warning" key={code + text}>
            <p>{text}</p>
            {code === 'suspicious-height-unit' && (
              <button
                type="button"
                className="link-button"
                onClick={() => bringIn.setOptions(key, { heightUnit: 'ft' })}
              >
                They are in feet
              </button>
            )}
          </div>
        ))}
        <GroupRows preview={preview} file={file} bringIn={bringIn} />
        <HoleFields document={before} preview={preview} file={file} bringIn={bringIn} />
        <HeightFields {...props} format={format} problem={null} />
        <CreditFields preview={preview} file={file} bringIn={bringIn} />
        {preview.leftOut.length > 0 && (
          <section>
            <h3>Left out</h3>
            <ul className="bringin-left-out">
              {preview.leftOut.map(({ what, why, count, places }) => (
                <li key={what + why}>
                  <strong>
                    {what.charAt(0).toUpperCase() + what.slice(1)}, {count.toLocaleString('en')}.
                  </strong>{' '}
                  {why}
                  {places.length > 0 && (
                    <span className="hint">
                      {' '}
                      {places.join(', ')}
                      {count > places.length ? ' and more' : ''}
                    </span>
                  )}
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
    </div>
  );
}

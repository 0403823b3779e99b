import type { BringIn, Brought } from './bringIn.ts';
import { previewOf } from './bringIn.ts';

interface FileTabsProps {
  readonly files: readonly Brought[];
  readonly shown: number | null;
  readonly bringIn: BringIn;
}

/** The files in the order they are taken, with how far each is. */
export function FileTabs({ files, shown, bringIn }: FileTabsProps): React.JSX.Element {
  return (
    <ol className="bringin-files" aria-label="Files, in the order they are taken">
      {files.map((file) => (
        <li key={file.key}>
          <button
            type="button"
            className="bringin-file"
            aria-pressed={file.key === shown}
            onClick={() => bringIn.show(file.key)}
          >
            <strong>{file.source.fileName}</strong>
            <span>{stateWords(file)}</span>
          </button>
          <button
            type="button"
            className="link-button"
            aria-label={`Leave out ${file.source.fileName}`}
            onClick={() => bringIn.remove(file.key)}
          >
            Leave out
          </button>
        </li>
      ))}
    </ol>
  );
}

function stateWords(file: Brought): string {
  switch (file.reading.at) {
    case 'waiting':
      return 'waits';
    case 'reading':
      return `reading, ${String(Math.round(file.reading.share * 100))} %`;
    case 'given up':
      return 'not read';
    case 'read':
      return previewOf(file)?.format ?? 'cannot be brought in';
  }
}

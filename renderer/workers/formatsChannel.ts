import type { AtlasDocument } from '../../shared/atlas/records.ts';
import type { FileToKeep } from '../../shared/exchange/oneFile.ts';
import type { ExportRequest } from '../../shared/exchange/sendOut.ts';
import type { CsvPeek } from '../../shared/formats/csv/csvPeek.ts';
import type { FileFormat } from '../../shared/formats/import/fileFormat.ts';
import type { ImportOptions, ImportPreview } from '../../shared/formats/import/importPreview.ts';
import type { PlainProblem } from './plainProblem.ts';

/** What is read: a file as the person chose it, or text that was pasted. */
export interface FormatsSource {
  readonly fileName: string;
  readonly content: Blob;
  /** The .prj file that was chosen with an ASCII grid. */
  readonly projection: Blob | null;
}

export interface PreviewQuestion {
  readonly kind: 'preview';
  readonly document: AtlasDocument;
  readonly source: FormatsSource;
  readonly options: Omit<ImportOptions, 'progress'>;
}

export interface SendOutQuestion {
  readonly kind: 'sendOut';
  readonly document: AtlasDocument;
  readonly request: ExportRequest;
  /** Name of the file without its ending. */
  readonly stem: string;
}

/** An atlas file, alone or in a bundle, to be opened. */
export interface OpenQuestion {
  readonly kind: 'open';
  readonly fileName: string;
  readonly content: Blob;
}

export type FormatsQuestion = PreviewQuestion | SendOutQuestion | OpenQuestion;

/** What a file is, and what it would bring or why it brings nothing. */
export interface PreviewAnswer {
  readonly kind: 'preview';
  /** Null where even that cannot be said. */
  readonly format: FileFormat | null;
  readonly preview: ImportPreview | null;
  readonly problem: PlainProblem | null;
  /** The head of a list of points, also where nothing comes in yet. */
  readonly csv: CsvPeek | null;
}

export type SendOutAnswer =
  | { readonly kind: 'sendOut'; readonly file: FileToKeep }
  | { readonly kind: 'failed'; readonly problem: PlainProblem };

export type OpenAnswer =
  | {
      readonly kind: 'open';
      /** The records as JSON: read again in a third of the time that a copy of so many objects takes. */
      readonly records: string;
      /** Files of pictures by their hash. */
      readonly pictures: ReadonlyMap<string, Uint8Array>;
      readonly damaged: readonly string[];
    }
  | { readonly kind: 'failed'; readonly problem: PlainProblem };

export interface Answers {
  readonly preview: PreviewAnswer;
  readonly sendOut: SendOutAnswer;
  readonly open: OpenAnswer;
}

export interface ToFormats {
  readonly ticket: number;
  readonly question: FormatsQuestion;
}

export type FromFormats =
  | { readonly ticket: number; readonly share: number }
  | { readonly ticket: number; readonly answer: PreviewAnswer | SendOutAnswer | OpenAnswer };

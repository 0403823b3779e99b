import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Edit, together } from '../../shared/atlas/edits.ts';
import type { AtlasDocument, RecordId } from '../../shared/atlas/records.ts';
import { applyImport, asChosen, isWithout } from '../../shared/formats/import/applyImport.ts';
import type {
  ImportOptions,
  ImportPreview,
  ImportSelection,
} from '../../shared/formats/import/importPreview.ts';
import type { Arrival } from '../store/arrivals.ts';
import type { FormatsSource, PreviewAnswer } from '../workers/formatsChannel.ts';
import type { PlainProblem } from '../workers/plainProblem.ts';
import type { FormatsClient } from '../workers/formatsClient.ts';

type Options = Omit<ImportOptions, 'progress'>;
type OptionsChange = { readonly [K in keyof Options]?: Options[K] | null };

/** How far a file is. */
export type Reading =
  | { readonly at: 'waiting' }
  | { readonly at: 'reading'; readonly share: number }
  | { readonly at: 'read'; readonly answer: PreviewAnswer }
  | { readonly at: 'given up' };

/** A file to bring in, with what the person has said about it. */
export interface Brought {
  readonly key: number;
  readonly source: FormatsSource;
  readonly options: Options;
  readonly selection: ImportSelection;
  readonly reading: Reading;
}

export interface BringInState {
  readonly files: readonly Brought[];
  /** Key of the file that is looked at. */
  readonly shown: number | null;
}

/**
 * Files on their way into an atlas. Each is read against the document as the files before it would leave it, so that heights
 * find the greens of a map brought in with them; a change reads again what it touches and nothing else.
 */
export class BringIn {
  readonly store: StoreApi<BringInState> = createStore<BringInState>(() => ({ files: [], shown: null }));
  readonly #client: FormatsClient;
  #document: AtlasDocument;
  #lastKey = 0;

  constructor(client: FormatsClient, document: AtlasDocument) {
    this.#client = client;
    this.#document = document;
  }

  /** The document changed underneath: everything is read anew against it. */
  onto(document: AtlasDocument): void {
    if (document === this.#document) return;
    this.#document = document;
    this.#readFrom(0);
  }

  /** @param holeId where the person is: a lone green goes to it unless it has one */
  add(arrivals: readonly Arrival[], holeId: RecordId | null): void {
    const { files, shown } = this.store.getState();
    const fresh = arrivals.map(({ source, options = {}, selection }): Brought => {
      this.#lastKey += 1;
      const usual = holeId === null ? {} : { greenOfHole: holeId };
      const reading = { at: 'waiting' } as const;
      return { key: this.#lastKey, source, options, selection: selection ?? usual, reading };
    });
    this.store.setState({ files: [...files, ...fresh], shown: fresh[0]?.key ?? shown });
    this.#next();
  }

  remove(key: number): void {
    const { files, shown } = this.store.getState();
    const at = files.findIndex((file) => file.key === key);
    const left = files.filter((file) => file.key !== key);
    this.store.setState({ files: left, shown: shown === key ? (left[0]?.key ?? null) : shown });
    this.#readFrom(at);
  }

  show(key: number): void {
    this.store.setState({ shown: key });
  }

  /** What is null or empty is left to the file again. */
  setOptions(key: number, change: OptionsChange): void {
    const at = this.#change(key, (file) => ({
      ...file,
      options: Object.fromEntries(
        Object.entries({ ...file.options, ...change }).filter(([, value]) => value !== null && value !== ''),
      ),
    }));
    this.#readFrom(at);
  }

  setSelection(key: number, change: Partial<ImportSelection>): void {
    const at = this.#change(key, (file) => ({ ...file, selection: { ...file.selection, ...change } }));
    this.#readFrom(at + 1);
  }

  /** Stops reading; what is not read yet stays out until it is asked for again. */
  cancel(): void {
    this.#client.cancel();
    this.#set((file) =>
      file.reading.at === 'reading' || file.reading.at === 'waiting'
        ? { ...file, reading: { at: 'given up' } }
        : file,
    );
  }

  again(key: number): void {
    this.#readFrom(this.store.getState().files.findIndex((file) => file.key === key));
  }

  /** Gives the reader's memory back. */
  close(): void {
    this.#client.close();
  }

  /** The whole as one step; null while anything is being read, or where nothing would come in. */
  edit(): Edit | null {
    const { files } = this.store.getState();
    if (files.some(({ reading }) => reading.at === 'reading' || reading.at === 'waiting')) return null;
    const parts = files.flatMap((file) => {
      const preview = previewOf(file);
      return preview === null || comingIn(this.#document, preview, file.selection) === 0
        ? []
        : [{ preview, selection: file.selection }];
    });
    if (parts.length === 0) return null;
    // Each is told the document the ones before it leave, as it was when it was read.
    const edits = parts.map(({ preview, selection }): Edit => ({
      annotation: applyImport(this.#document, preview, selection).annotation,
      apply: (document) => applyImport(document, preview, selection).apply(document),
    }));
    return edits.length === 1 && edits[0] !== undefined
      ? edits[0]
      : together(`imported ${String(edits.length)} files`, edits);
  }

  /** The document a file is read against. */
  before(key: number): AtlasDocument {
    return this.#documentBefore(this.store.getState().files.findIndex((file) => file.key === key));
  }

  #documentBefore(at: number): AtlasDocument {
    let document = this.#document;
    for (const file of this.store.getState().files.slice(0, Math.max(0, at))) {
      const preview = previewOf(file);
      if (preview !== null) document = applyImport(document, preview, file.selection).apply(document);
    }
    return document;
  }

  #readFrom(at: number): void {
    this.#client.cancel();
    this.#set((file, i) =>
      i >= at || file.reading.at === 'reading' ? { ...file, reading: { at: 'waiting' } } : file,
    );
    this.#next();
  }

  /** Reads the first file that waits, unless one is being read. */
  #next(): void {
    const { files } = this.store.getState();
    if (files.some(({ reading }) => reading.at === 'reading')) return;
    const at = files.findIndex(({ reading }) => reading.at === 'waiting');
    const file = files[at];
    if (file === undefined) return;
    const { key, source, options } = file;
    const tell = (reading: Reading): void => void this.#change(key, (now) => ({ ...now, reading }));
    const finish = (answer: PreviewAnswer): void => {
      tell({ at: 'read', answer });
      this.#next();
    };
    tell({ at: 'reading', share: 0 });
    this.#client.ask(
      { kind: 'preview', document: this.#documentBefore(at), source, options },
      {
        progress: (share) => tell({ at: 'reading', share }),
        answer: finish,
        stopped: (problem: PlainProblem) =>
          finish({
            kind: 'preview',
            format: null,
            preview: null,
            csv: null,
            problem: { ...problem, message: `${source.fileName}: ${problem.message}` },
          }),
      },
    );
  }

  #change(key: number, change: (file: Brought) => Brought): number {
    this.#set((file) => (file.key === key ? change(file) : file));
    return this.store.getState().files.findIndex((file) => file.key === key);
  }

  #set(change: (file: Brought, i: number) => Brought): void {
    this.store.setState({ files: this.store.getState().files.map(change) });
  }
}

export const previewOf = ({ reading }: Brought): ImportPreview | null =>
  reading.at === 'read' ? reading.answer.preview : null;

/** How many records would come in as chosen. */
export function comingIn(
  document: AtlasDocument,
  preview: ImportPreview,
  selection: ImportSelection,
): number {
  return preview.groups
    .filter(({ key }) => !isWithout(key, selection))
    .reduce((sum, group) => sum + asChosen(document, group, selection).length, 0);
}

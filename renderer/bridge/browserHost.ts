import type { Host, HostResult, OpenedFile } from '../../shared/protocol/host.ts';
import { printPage } from './printPage.ts';

/** The parts of the File System Access API in use: Chromium has them, other browsers may not. */
interface WritableFile {
  write(content: string | Uint8Array<ArrayBuffer>): Promise<void>;
  close(): Promise<void>;
}
interface FileHandle {
  readonly name: string;
  getFile(): Promise<File>;
  createWritable(): Promise<WritableFile>;
}
interface PickerOptions {
  readonly suggestedName?: string;
  readonly types: readonly { readonly description: string; readonly accept: Record<string, string[]> }[];
}
interface FilePickers {
  showOpenFilePicker?(options: PickerOptions): Promise<readonly FileHandle[]>;
  showSaveFilePicker?(options: PickerOptions): Promise<FileHandle>;
}

const ATLAS_TYPE = 'application/geo+json';
const BUNDLE_TYPE = 'application/zip';
const plain = { description: 'Swale atlas', accept: { [ATLAS_TYPE]: ['.geojson', '.json'] } };
const bundle = { description: 'Swale atlas with pictures', accept: { [BUNDLE_TYPE]: ['.zip'] } };
const either = {
  description: 'Swale atlas',
  accept: { [ATLAS_TYPE]: ['.geojson', '.json'], [BUNDLE_TYPE]: ['.zip'] },
};
const isZip = (fileName: string): boolean => fileName.toLowerCase().endsWith('.zip');
const DOWNLOAD = 'download:';

const ok = <T>(value: T): HostResult<T> => ({ ok: true, value });
const refused = (reason: string): { readonly ok: false; readonly reason: string } => ({ ok: false, reason });
const changedMind = (error: unknown): boolean => error instanceof DOMException && error.name === 'AbortError';
const sentence = (error: unknown): string =>
  error instanceof Error ? error.message : 'The browser refused.';

/** Larger files are no atlas, and reading one would take memory the window has not got. */
const MOST_BYTES = 256 * 1024 * 1024;

const contentOf = async (file: File): Promise<Uint8Array | null> =>
  file.size > MOST_BYTES ? null : new Uint8Array(await file.arrayBuffer());

const tooLarge = (fileName: string): { readonly ok: false; readonly reason: string } =>
  refused(`${fileName}: the file is far larger than an atlas can be. Choose an atlas file.`);

function download(fileName: string, content: string | Uint8Array<ArrayBuffer>, type: string): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // The browser reads the blob after the click has returned.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

function chooseUpload(): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = `.geojson,.json,.zip,${ATLAS_TYPE},${BUNDLE_TYPE}`;
    // In the page while it asks: one that is held by nothing else may be collected before it is answered.
    input.hidden = true;
    document.body.append(input);
    const answer = (): void => {
      input.remove();
      resolve(input.files?.[0] ?? null);
    };
    input.addEventListener('change', answer);
    input.addEventListener('cancel', answer);
    input.click();
  });
}

/** The host a plain browser can offer: its own file pickers where it has them, else upload and download. */
export function browserHost(): Host {
  const pickers = window as unknown as FilePickers; // not in TypeScript's DOM library
  const handles = new Map<string, FileHandle>();
  let lastHandle = 0;
  const remember = (handle: FileHandle): string => {
    lastHandle += 1;
    const token = `file:${lastHandle}`;
    handles.set(token, handle);
    return token;
  };

  const write = async (handle: FileHandle, content: string | Uint8Array<ArrayBuffer>): Promise<void> => {
    // The browser writes to a swap file and puts it in place when closed, so the old file stays whole until then.
    const file = await handle.createWritable();
    await file.write(content);
    await file.close();
  };

  return {
    async openAtlas(): Promise<HostResult<OpenedFile | null>> {
      try {
        if (pickers.showOpenFilePicker !== undefined) {
          const [handle] = await pickers.showOpenFilePicker({ types: [either] });
          if (handle === undefined) return ok(null);
          const content = await contentOf(await handle.getFile());
          return content === null
            ? tooLarge(handle.name)
            : ok({ handle: remember(handle), fileName: handle.name, content });
        }
        const file = await chooseUpload();
        if (file === null) return ok(null);
        const content = await contentOf(file);
        return content === null
          ? tooLarge(file.name)
          : ok({ handle: DOWNLOAD + file.name, fileName: file.name, content });
      } catch (error) {
        return changedMind(error) ? ok(null) : refused(`The file could not be read. ${sentence(error)}`);
      }
    },

    async saveAtlas(token, content) {
      try {
        if (token.startsWith(DOWNLOAD)) {
          const fileName = token.slice(DOWNLOAD.length);
          download(fileName, new Uint8Array(content), isZip(fileName) ? BUNDLE_TYPE : ATLAS_TYPE);
          return ok(null);
        }
        const handle = handles.get(token);
        if (handle === undefined) return refused('The place of this file is no longer known. Use Save as.');
        await write(handle, new Uint8Array(content));
        return ok(null);
      } catch (error) {
        return refused(`The file was not written. ${sentence(error)} Use Save as to keep a copy elsewhere.`);
      }
    },

    async saveAtlasAs(suggestedName, content) {
      try {
        const bytes = new Uint8Array(content);
        const zipped = isZip(suggestedName);
        if (pickers.showSaveFilePicker === undefined) {
          download(suggestedName, bytes, zipped ? BUNDLE_TYPE : ATLAS_TYPE);
          return ok({ handle: DOWNLOAD + suggestedName, fileName: suggestedName });
        }
        const handle = await pickers.showSaveFilePicker({
          suggestedName,
          types: [zipped ? bundle : plain],
        });
        await write(handle, bytes);
        return ok({ handle: remember(handle), fileName: handle.name });
      } catch (error) {
        return changedMind(error) ? ok(null) : refused(`The file was not written. ${sentence(error)}`);
      }
    },

    async keepFile(suggestedName, content) {
      try {
        const bytes = new Uint8Array(content);
        if (pickers.showSaveFilePicker === undefined)
          download(suggestedName, bytes, 'application/octet-stream');
        else {
          const ending = suggestedName.slice(suggestedName.lastIndexOf('.'));
          const types = [{ description: ending, accept: { 'application/octet-stream': [ending] } }];
          await write(await pickers.showSaveFilePicker({ suggestedName, types }), bytes);
        }
        return ok(true);
      } catch (error) {
        return changedMind(error) ? ok(false) : refused(`The file was not written. ${sentence(error)}`);
      }
    },

    async printPlaybook(html, suggestedName) {
      try {
        await printPage(html, suggestedName);
        return ok(null);
      } catch (error) {
        return refused(`The playbook could not be printed. ${sentence(error)}`);
      }
    },

    async sampleAtlas() {
      try {
        const sample = await import('../../sample-course/ossel-down.geojson?raw');
        return ok(sample.default);
      } catch (error) {
        return refused(`The sample course could not be read. ${sentence(error)}`);
      }
    },

    // A page has no menu bar of its own: everything is in the window.
    onCommand: () => () => undefined,
  };
}

import { basename, extname, parse } from 'node:path';
import { dialog, type BrowserWindow } from 'electron';
import type { HostCalls, HostResult } from '../../shared/protocol/host.ts';
import type { AtlasFiles } from '../files/atlasFiles.ts';
import { fileProblem } from '../files/fileProblem.ts';
import { writeAtomic } from '../files/writeAtomic.ts';
import { InputProblem } from '../../shared/words/inputProblem.ts';

const atlasFilter = { name: 'Swale atlas', extensions: ['geojson', 'json'] };
const bundleFilter = { name: 'Swale atlas with pictures', extensions: ['zip'] };
const openFilter = {
  name: 'Swale atlas',
  extensions: [...atlasFilter.extensions, ...bundleFilter.extensions],
};
const ok = <T>(value: T): HostResult<T> => ({ ok: true, value });

export interface DesktopParts {
  /** The window that dialogs belong to. */
  readonly window: () => BrowserWindow | null;
  readonly files: AtlasFiles;
  readonly toPdf: (html: string) => Promise<Uint8Array>;
}

/** The host on the desktop: the system's own dialogs, files written atomically, and PDF from the built-in browser. */
export function desktopHost({ window, files, toPdf }: DesktopParts): HostCalls {
  const askForPlace = async (suggested: string, filter: Electron.FileFilter): Promise<string | null> => {
    const options = { defaultPath: suggested, filters: [filter] };
    const parent = window();
    const answer =
      parent === null ? await dialog.showSaveDialog(options) : await dialog.showSaveDialog(parent, options);
    return answer.canceled || answer.filePath === '' ? null : answer.filePath;
  };

  return {
    async openAtlas() {
      const options: Electron.OpenDialogOptions = { properties: ['openFile'], filters: [openFilter] };
      const parent = window();
      const answer =
        parent === null ? await dialog.showOpenDialog(options) : await dialog.showOpenDialog(parent, options);
      const [path] = answer.filePaths;
      return ok(answer.canceled || path === undefined ? null : await files.open(path));
    },

    async saveAtlas(handle, content) {
      await files.save(handle, content);
      return ok(null);
    },

    async saveAtlasAs(suggestedName, content) {
      const bundle = isZip(suggestedName);
      const path = await askForPlace(fileNameOf(suggestedName), bundle ? bundleFilter : atlasFilter);
      if (path === null) return ok(null);
      if (isZip(path) !== bundle)
        throw new InputProblem(
          'wrong-ending',
          bundle ? 'an atlas with pictures is kept in a bundle.' : 'an atlas without pictures is no bundle.',
          basename(path),
          `Give it a name that ends in ${bundle ? '.zip' : '.geojson'}.`,
        );
      return ok(await files.saveAs(path, content));
    },

    async keepFile(suggestedName, content) {
      const name = fileNameOf(suggestedName);
      const ending = extname(name).slice(1);
      const path = await askForPlace(name, { name: ending.toUpperCase(), extensions: [ending] });
      if (path === null) return ok(false);
      await written(path, content);
      return ok(true);
    },

    async printPlaybook(html, suggestedName) {
      const { name } = parse(fileNameOf(suggestedName));
      const path = await askForPlace(`${name}.pdf`, { name: 'PDF', extensions: ['pdf'] });
      if (path === null) return ok(null);
      await written(path, await toPdf(html));
      return ok(null);
    },

    async sampleAtlas() {
      const sample = await import('../../sample-course/ossel-down.geojson?raw');
      return ok(sample.default);
    },
  };
}

async function written(path: string, content: Uint8Array): Promise<void> {
  try {
    await writeAtomic(path, content);
  } catch (error) {
    throw fileProblem(error, path);
  }
}

const isZip = (path: string): boolean => extname(path).toLowerCase() === '.zip';

/** A page suggests a name, never a folder. */
const fileNameOf = (suggested: string): string => basename(suggested.replaceAll('\\', '/'));

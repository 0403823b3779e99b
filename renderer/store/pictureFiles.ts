import { createStore } from 'zustand/vanilla';
import type { PictureRecord } from '../../shared/atlas/records.ts';
import { Pictures } from '../library/pictures.ts';

/** A picture on its way to the screen: an address the window can show, or why there is none. */
export type PictureFile =
  | { readonly state: 'loading' }
  | { readonly state: 'ready'; readonly url: string }
  | { readonly state: 'missing' }
  | { readonly state: 'broken' };

/** The pictures asked for so far, by hash. */
export const pictureFiles = createStore<Readonly<Record<string, PictureFile>>>(() => ({}));

let kept: Pictures | null = null;

/** Where this window keeps pictures. */
export const keptPictures = (): Pictures => (kept ??= new Pictures());

const put = (sha256: string, file: PictureFile): void => pictureFiles.setState({ [sha256]: file });

/** Gets the files of these pictures ready to be shown; the address of one that is shown no more is given back. */
export function showPictures(records: readonly PictureRecord[], pictures = keptPictures()): void {
  const wanted = new Set(records.map(({ sha256 }) => sha256));
  const known = pictureFiles.getState();
  for (const [sha256, file] of Object.entries(known)) {
    if (wanted.has(sha256) || file.state !== 'ready') continue;
    URL.revokeObjectURL(file.url);
    pictureFiles.setState(
      Object.fromEntries(Object.entries(pictureFiles.getState()).filter(([key]) => key !== sha256)),
      true,
    );
  }
  for (const { sha256, mediaType } of records) {
    const state = pictureFiles.getState()[sha256]?.state;
    if (state === 'loading' || state === 'ready' || state === 'broken') continue;
    put(sha256, { state: 'loading' });
    pictures.load(sha256).then(
      (content) => {
        if (content === null) put(sha256, { state: 'missing' });
        else {
          const blob = new Blob([new Uint8Array(content)], { type: mediaType });
          put(sha256, { state: 'ready', url: URL.createObjectURL(blob) });
        }
      },
      () => put(sha256, { state: 'missing' }),
    );
  }
}

/** The window could not show what the file holds. */
export function pictureBroke(sha256: string): void {
  put(sha256, { state: 'broken' });
}

import type { WebContents } from 'electron';
import { isWindowUrl } from './address.ts';

/** Keeps a page where it is: no way out to other addresses, no second window, no embedded guest. */
export function guardContents(contents: WebContents): void {
  contents.on('will-navigate', (event) => {
    if (!isWindowUrl(event.url)) event.preventDefault();
  });
  contents.on('will-redirect', (event) => {
    if (!isWindowUrl(event.url)) event.preventDefault();
  });
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

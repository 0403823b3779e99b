import { randomUUID } from 'node:crypto';
import { BrowserWindow } from 'electron';
import { PRINT_ORIGIN } from './address.ts';

/**
 * Renders a self-contained page to PDF bytes at the page's own size. The page is put into `printable` while it is being
 * loaded into a hidden window in which no script runs.
 */
export async function printToPdf(html: string, printable: Map<string, string>): Promise<Uint8Array> {
  const token = randomUUID();
  const window = new BrowserWindow({
    show: false,
    webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, javascript: false },
  });
  printable.set(token, html);
  try {
    await window.loadURL(`${PRINT_ORIGIN}/${token}`);
    return await window.webContents.printToPDF({
      preferCSSPageSize: true,
      printBackground: true,
      generateTaggedPDF: true,
    });
  } finally {
    printable.delete(token);
    window.destroy();
  }
}

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserWindow } from 'electron';
import { app, Menu, protocol, session, shell } from 'electron';
import { atlasFiles } from '../files/atlasFiles.ts';
import { answerHost } from '../ipc/answerHost.ts';
import { sendCommand } from '../ipc/sendCommand.ts';
import { SCHEME, WINDOW_ORIGIN } from './address.ts';
import { answerPages } from './answerPages.ts';
import { createWindow } from './createWindow.ts';
import { desktopHost } from './desktopHost.ts';
import { guardContents } from './guardContents.ts';
import { menuTemplate } from './menu.ts';
import { limitPermissions } from './permissions.ts';
import { nameOurselves } from './pictureRequests.ts';
import { printToPdf } from './printToPdf.ts';

/** Starts the desktop program. `out` is the folder of the build. */
export async function boot(out: string): Promise<void> {
  // Two copies would write the same files and the same database.
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
  app.on('web-contents-created', (_event, contents) => guardContents(contents));
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit();
  });

  await app.whenReady();
  const backups = join(app.getPath('userData'), 'backups');
  const printable = new Map<string, string>();
  answerPages(protocol, join(out, 'renderer'), printable);
  limitPermissions(session.defaultSession);
  nameOurselves(session.defaultSession, app.getVersion());

  let window: BrowserWindow | null = null;
  const openWindow = (): void => {
    window = createWindow({
      preload: join(out, 'preload', 'preload.cjs'),
      place: join(app.getPath('userData'), 'window.json'),
    });
    window.on('closed', () => {
      window = null;
    });
  };

  answerHost(
    desktopHost({
      window: () => window,
      files: atlasFiles(backups),
      toPdf: (html) => printToPdf(html, printable),
    }),
    (frame) => frame !== null && frame.parent === null && frame.origin === WINDOW_ORIGIN,
  );
  Menu.setApplicationMenu(
    Menu.buildFromTemplate(
      menuTemplate(process.platform, !app.isPackaged, {
        showBackups: () => {
          mkdirSync(backups, { recursive: true });
          void shell.openPath(backups);
        },
        command: (command) => {
          if (window !== null) sendCommand(window.webContents, command);
        },
      }),
    ),
  );
  app.on('second-instance', () => {
    if (window === null) {
      openWindow();
      return;
    }
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  app.on('activate', () => {
    if (window === null) openWindow();
  });
  openWindow();
}

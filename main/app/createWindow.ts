import { BrowserWindow, nativeTheme, screen } from 'electron';
import { WINDOW_URL } from './address.ts';
import { readWindowPlace, writeWindowPlace } from './windowPlace.ts';

/** Paper colours of the two themes, so that nothing flashes before the first paint. */
const paper = { light: '#F1F3F0', dark: '#12181E' };

export interface WindowFiles {
  readonly preload: string;
  /** Where the place of the window is kept between runs. */
  readonly place: string;
}

/** Opens the one window, sandboxed and isolated from the program behind it. */
export function createWindow({ preload, place }: WindowFiles): BrowserWindow {
  const { bounds, maximized } = readWindowPlace(
    place,
    screen.getAllDisplays().map((display) => display.workArea),
  );
  const window = new BrowserWindow({
    ...bounds,
    minWidth: 800,
    minHeight: 560,
    title: 'Swale',
    show: false,
    backgroundColor: nativeTheme.shouldUseDarkColors ? paper.dark : paper.light,
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webviewTag: false,
      spellcheck: false,
    },
  });
  if (maximized) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.on('close', () => {
    // Losing the place of a window is no reason to keep it open.
    writeWindowPlace(place, window.getNormalBounds(), window.isMaximized()).catch(() => undefined);
  });
  void window.loadURL(WINDOW_URL);
  return window;
}

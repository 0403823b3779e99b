import { EventEmitter } from 'node:events';

/**
 * A stand-in for the parts of Electron that main/ uses, for tests without its runtime: it remembers what was set and
 * lets a test play the other side. It proves our wiring, not Electron's behaviour.
 */
interface StubFrame {
  readonly origin: string;
  readonly parent: StubFrame | null;
}

class StubWebContents extends EventEmitter {
  windowOpenHandler: ((details: { readonly url: string }) => { readonly action: string }) | null = null;
  readonly pdfOptions: unknown[] = [];
  /** A message to the page reaches whatever the page's side listens with. */
  send(channel: string, ...given: unknown[]): void {
    ipcRenderer.emit(channel, {}, ...given);
  }
  setWindowOpenHandler(handler: (details: { readonly url: string }) => { readonly action: string }): void {
    this.windowOpenHandler = handler;
  }
  printToPDF(options: unknown): Promise<Buffer> {
    this.pdfOptions.push(options);
    return Promise.resolve(Buffer.from('%PDF-stub'));
  }
}

export class BrowserWindow extends EventEmitter {
  static made: BrowserWindow[] = [];
  readonly webContents = new StubWebContents();
  readonly loaded: string[] = [];
  destroyed = false;
  shown = false;
  focused = 0;
  minimized = false;
  /** Called with each address as it is loaded. */
  static onLoad: (url: string) => Promise<void> = () => Promise.resolve();

  constructor(readonly options: Readonly<Record<string, unknown>>) {
    super();
    BrowserWindow.made.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  async loadURL(url: string): Promise<void> {
    this.loaded.push(url);
    await BrowserWindow.onLoad(url);
  }
  show(): void {
    this.shown = true;
  }
  focus(): void {
    this.focused += 1;
  }
  maximize(): void {
    this.emit('maximize');
  }
  isMaximized(): boolean {
    return false;
  }
  isMinimized(): boolean {
    return this.minimized;
  }
  restore(): void {
    this.minimized = false;
  }
  getNormalBounds(): { x: number; y: number; width: number; height: number } {
    return { x: 10, y: 20, width: 1200, height: 800 };
  }
  destroy(): void {
    this.destroyed = true;
    this.emit('closed');
  }
}

class StubApp extends EventEmitter {
  lock = true;
  quits = 0;
  isPackaged = false;
  getVersion(): string {
    return '1.2.3';
  }
  readonly paths = new Map<string, string>();
  requestSingleInstanceLock(): boolean {
    return this.lock;
  }
  quit(): void {
    this.quits += 1;
  }
  whenReady(): Promise<void> {
    return Promise.resolve();
  }
  getPath(name: string): string {
    const path = this.paths.get(name);
    if (path === undefined) throw new Error(`the test set no path for ${name}`);
    return path;
  }
}
export const app = new StubApp();

type Handler = (event: { readonly senderFrame: StubFrame | null }, ...given: unknown[]) => unknown;
const handlers = new Map<string, Handler>();
export const ipcMain = {
  handle(channel: string, handler: Handler): void {
    if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
    handlers.set(channel, handler);
  },
};
class StubIpcRenderer extends EventEmitter {
  /** The frame that the next calls come from. */
  frame: StubFrame | null = { origin: 'app://swale', parent: null };
  async invoke(channel: string, ...given: unknown[]): Promise<unknown> {
    const handler = handlers.get(channel);
    if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
    // What crosses between processes is a structured clone.
    return structuredClone(await handler({ senderFrame: this.frame }, ...structuredClone(given)));
  }
}
export const ipcRenderer = new StubIpcRenderer();

export const contextBridge = {
  exposed: new Map<string, unknown>(),
  exposeInMainWorld(name: string, value: unknown): void {
    contextBridge.exposed.set(name, value);
  },
};

type ProtocolHandler = (request: Request) => Response | Promise<Response>;
interface PrivilegedScheme {
  readonly scheme: string;
  readonly privileges: Readonly<Record<string, boolean>>;
}
const schemeHandlers = new Map<string, ProtocolHandler>();
export const protocol = {
  privileged: [] as readonly PrivilegedScheme[],
  registerSchemesAsPrivileged(schemes: readonly PrivilegedScheme[]): void {
    protocol.privileged = schemes;
  },
  handle(scheme: string, handler: ProtocolHandler): void {
    schemeHandlers.set(scheme, handler);
  },
  /** Asks for an address as a page would. */
  async fetch(url: string): Promise<Response> {
    const handler = schemeHandlers.get(new URL(url).protocol.slice(0, -1));
    if (handler === undefined) throw new Error(`nothing answers ${url}`);
    return handler(new Request(url));
  },
};

type PermissionRequest = (
  contents: null,
  permission: string,
  answer: (granted: boolean) => void,
  details: { readonly requestingUrl: string },
) => void;
interface StubRequest {
  readonly url: string;
  readonly resourceType: string;
  readonly requestHeaders: Readonly<Record<string, string>>;
}
type HeadersHandler = (
  details: StubRequest,
  answer: (changed: { readonly requestHeaders?: Readonly<Record<string, string>> }) => void,
) => void;
type PermissionCheck = (contents: null, permission: string, origin: string) => boolean;
export const session = {
  defaultSession: {
    request: null as PermissionRequest | null,
    check: null as PermissionCheck | null,
    device: null as (() => boolean) | null,
    webRequest: {
      urls: [] as readonly string[],
      headers: null as HeadersHandler | null,
      onBeforeSendHeaders({ urls }: { readonly urls: readonly string[] }, handler: HeadersHandler): void {
        Object.assign(session.defaultSession.webRequest, { urls, headers: handler });
      },
    },
    setPermissionRequestHandler(handler: PermissionRequest): void {
      session.defaultSession.request = handler;
    },
    setPermissionCheckHandler(handler: PermissionCheck): void {
      session.defaultSession.check = handler;
    },
    setDevicePermissionHandler(handler: () => boolean): void {
      session.defaultSession.device = handler;
    },
  },
};

export const Menu = {
  applicationMenu: null as unknown,
  buildFromTemplate: (template: unknown): unknown => template,
  setApplicationMenu(menu: unknown): void {
    Menu.applicationMenu = menu;
  },
};

export const dialog = {
  /** What the person chooses next; null when they change their mind. */
  chosen: null as string | null,
  asked: [] as unknown[],
  showOpenDialog(...given: unknown[]): Promise<{ canceled: boolean; filePaths: string[] }> {
    dialog.asked.push(given.at(-1));
    return Promise.resolve({
      canceled: dialog.chosen === null,
      filePaths: dialog.chosen === null ? [] : [dialog.chosen],
    });
  },
  showSaveDialog(...given: unknown[]): Promise<{ canceled: boolean; filePath: string }> {
    dialog.asked.push(given.at(-1));
    return Promise.resolve({ canceled: dialog.chosen === null, filePath: dialog.chosen ?? '' });
  },
};

export const shell = {
  opened: [] as string[],
  openPath(path: string): Promise<string> {
    shell.opened.push(path);
    return Promise.resolve('');
  },
};

export const screen = {
  getAllDisplays: (): { workArea: { x: number; y: number; width: number; height: number } }[] => [
    { workArea: { x: 0, y: 0, width: 1920, height: 1080 } },
  ],
};
export const nativeTheme = { shouldUseDarkColors: false };

/** Forgets everything, between tests. */
export function reset(): void {
  BrowserWindow.made = [];
  BrowserWindow.onLoad = () => Promise.resolve();
  app.removeAllListeners();
  app.lock = true;
  app.quits = 0;
  app.paths.clear();
  handlers.clear();
  schemeHandlers.clear();
  ipcRenderer.frame = { origin: 'app://swale', parent: null };
  ipcRenderer.removeAllListeners();
  dialog.chosen = null;
  dialog.asked = [];
  shell.opened = [];
}

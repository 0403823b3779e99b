import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { boot } from '../../../main/app/boot.ts';
import { invokeHost } from '../../../main/ipc/invokeHost.ts';
import * as electron from '../../stubs/electron.ts';
import { temporaryFolder } from '../../helpers/temporaryFolder.ts';

beforeEach(() => electron.reset());

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A started program with a built window of one page, and the folder it all lies in. */
async function started(): Promise<string> {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'out', 'renderer'), { recursive: true });
  writeFileSync(join(folder, 'out', 'renderer', 'index.html'), '<!doctype html><title>Swale</title>');
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  electron.app.paths.set('userData', join(folder, 'data'));
  mkdirSync(join(folder, 'data'));
  await boot(join(folder, 'out'));
  return folder;
}

const onlyWindow = (): electron.BrowserWindow => {
  const [window, ...others] = electron.BrowserWindow.made;
  if (window === undefined || others.length > 0) throw new Error('expected one window');
  return window;
};

describe('the desktop program', () => {
  it('opens one sandboxed, isolated window on its own address', async () => {
    await started();
    const window = onlyWindow();
    expect(window.loaded).toEqual(['app://swale/']);
    expect(window.options['webPreferences']).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webviewTag: false,
    });
    expect(electron.protocol.privileged).toEqual([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
    expect(window.shown).toBe(false);
    window.emit('ready-to-show');
    expect(window.shown).toBe(true);
  });

  it('leaves the field to a copy that is already running', async () => {
    electron.app.lock = false;
    await boot('/nowhere');
    expect(electron.app.quits).toBe(1);
    expect(electron.BrowserWindow.made).toEqual([]);
  });

  it('brings its window forward when it is started again', async () => {
    await started();
    onlyWindow().minimized = true;
    electron.app.emit('second-instance');
    expect(onlyWindow()).toMatchObject({ minimized: false, focused: 1 });
  });

  it('serves its pages isolated and under strict rules, and nothing from outside the build', async () => {
    await started();
    const page = await electron.protocol.fetch('app://swale/');
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<title>Swale</title>');
    expect(page.headers.get('cross-origin-opener-policy')).toBe('same-origin');
    expect(page.headers.get('cross-origin-embedder-policy')).toBe('credentialless');
    expect(page.headers.get('content-security-policy')).toContain("script-src 'self';");
    for (const url of ['app://swale/..%2f..%2fsecret.txt', 'app://other/', 'app://print/unknown'])
      expect((await electron.protocol.fetch(url)).status, url).toBe(404);
  });

  it('lets no page lead elsewhere, open windows or embed guests', async () => {
    await started();
    const contents = onlyWindow().webContents;
    const prevented = (event: string, url: string): boolean => {
      let stopped = false;
      contents.emit(event, { url, preventDefault: () => (stopped = true) });
      return stopped;
    };
    for (const event of ['will-navigate', 'will-redirect']) {
      expect(prevented(event, 'app://swale/index.html')).toBe(false);
      for (const url of [
        'https://example.com/',
        'file:///etc/passwd',
        'app://swale.example/',
        'app://print/x',
      ])
        expect(prevented(event, url), `${event} ${url}`).toBe(true);
    }
    expect(prevented('will-attach-webview', '')).toBe(true);
    expect(contents.windowOpenHandler?.({ url: 'app://swale/' })).toEqual({ action: 'deny' });
  });

  it('refuses every permission but the few in its table, and those to others', async () => {
    await started();
    const { check, request, device } = electron.session.defaultSession;
    const asked = (permission: string, requestingUrl: string): boolean => {
      let answer = false;
      request?.(null, permission, (granted) => (answer = granted), { requestingUrl });
      return answer;
    };
    expect(check?.(null, 'fullscreen', 'app://swale/')).toBe(true);
    expect(asked('clipboard-sanitized-write', 'app://swale/index.html')).toBe(true);
    expect(check?.(null, 'fullscreen', 'https://example.com')).toBe(false);
    for (const permission of ['geolocation', 'media', 'notifications', 'fileSystem', 'clipboard-read'])
      expect([check?.(null, permission, 'app://swale/'), asked(permission, 'app://swale/')]).toEqual([
        false,
        false,
      ]);
    expect(device?.()).toBe(false);
  });

  it('remembers where its window was', async () => {
    const folder = await started();
    onlyWindow().emit('close');
    await expect
      .poll(() => readFileSync(join(folder, 'data', 'window.json'), 'utf8'))
      .toBe('{"bounds":{"x":10,"y":20,"width":1200,"height":800},"maximized":false}\n');
  });
});

interface MenuEntry {
  readonly label?: string;
  readonly accelerator?: string;
  readonly submenu?: readonly MenuEntry[];
  readonly click?: () => void;
}

describe('the menu bar', () => {
  it('hands files and undoing to the window, with the keys the window has too', async () => {
    await started();
    const heard: string[] = [];
    const stop = invokeHost.onCommand((command) => heard.push(command));
    const menu = electron.Menu.applicationMenu as readonly MenuEntry[];
    const entries = menu.flatMap(({ submenu }) => submenu ?? []);
    const keys = entries.flatMap(({ label, accelerator, click }) => {
      if (accelerator !== undefined) click?.();
      return accelerator === undefined ? [] : [`${label ?? ''}: ${accelerator}`];
    });
    expect(keys).toEqual([
      'New: CmdOrCtrl+N',
      'Open a file: CmdOrCtrl+O',
      'Save: CmdOrCtrl+S',
      'Save as: Shift+CmdOrCtrl+S',
      'Undo: CmdOrCtrl+Z',
      'Redo: Shift+CmdOrCtrl+Z',
    ]);
    expect(heard).toEqual(['new', 'open', 'save', 'saveAs', 'undo', 'redo']);
    electron.ipcRenderer.emit('menu:command', {}, 'format the disk');
    stop();
    entries.find(({ label }) => label === 'Save')?.click?.();
    expect(heard).toHaveLength(6);
  });
});

describe('requests for map pictures', () => {
  it('say which program asks, and other requests stay as they are', async () => {
    await started();
    const { headers, urls } = electron.session.defaultSession.webRequest;
    expect(urls).toEqual(['https://*/*', 'http://*/*']);
    const sent = (resourceType: string): unknown => {
      let answered: unknown;
      headers?.(
        { url: 'https://tiles.example/1/2/3.png', resourceType, requestHeaders: { Accept: 'image/png' } },
        (changed) => (answered = changed),
      );
      return answered;
    };
    expect(sent('image')).toEqual({
      requestHeaders: {
        Accept: 'image/png',
        'User-Agent': 'Swale/1.2.3 (desktop atlas)',
        Referer: 'app://swale/',
      },
    });
    expect(sent('script')).toEqual({});
  });
});

describe('calls from the window', () => {
  it('opens an atlas, saves it with a backup, and says no more than its name', async () => {
    const folder = await started();
    const path = join(folder, 'course.geojson');
    writeFileSync(path, 'one');
    electron.dialog.chosen = path;
    const opened = await invokeHost.openAtlas();
    if (!opened.ok || opened.value === null) throw new Error('not opened');
    expect(opened.value.fileName).toBe('course.geojson');
    expect(Buffer.from(opened.value.content).toString()).toBe('one');
    expect(JSON.stringify(opened.value)).not.toContain(folder);
    expect(await invokeHost.saveAtlas(opened.value.handle, bytes('two'))).toEqual({ ok: true, value: null });
    expect(readFileSync(path, 'utf8')).toBe('two');
  });

  it('keeps a bundle and an atlas file apart by their endings', async () => {
    const folder = await started();
    electron.dialog.chosen = join(folder, 'course.geojson');
    expect(await invokeHost.saveAtlasAs('course.zip', bytes('PK'))).toEqual({
      ok: false,
      reason: 'course.geojson: an atlas with pictures is kept in a bundle. Give it a name that ends in .zip.',
    });
    electron.dialog.chosen = join(folder, 'course.ZIP');
    const saved = await invokeHost.saveAtlasAs('course.zip', bytes('PK'));
    expect(saved).toMatchObject({ ok: true, value: { fileName: 'course.ZIP' } });
    expect(readFileSync(join(folder, 'course.ZIP'), 'utf8')).toBe('PK');
    expect(await invokeHost.saveAtlasAs('course.geojson', bytes('{}'))).toMatchObject({ ok: false });
    expect(electron.dialog.asked).toMatchObject([
      { filters: [{ extensions: ['zip'] }] },
      { filters: [{ extensions: ['zip'] }] },
      { filters: [{ extensions: ['geojson', 'json'] }] },
    ]);
  });

  it('gives null when the person changes their mind', async () => {
    await started();
    expect(await invokeHost.openAtlas()).toEqual({ ok: true, value: null });
    expect(await invokeHost.saveAtlasAs('x.geojson', bytes('{}'))).toEqual({ ok: true, value: null });
    expect(await invokeHost.printPlaybook('<p>', 'x')).toEqual({ ok: true, value: null });
  });

  it('refuses frames that are not the window itself', async () => {
    await started();
    const top = { origin: 'app://swale', parent: null };
    for (const frame of [
      null,
      { origin: 'app://print', parent: null },
      { origin: 'app://swale', parent: top },
    ]) {
      electron.ipcRenderer.frame = frame;
      expect(await invokeHost.openAtlas()).toMatchObject({ ok: false });
    }
    expect(electron.dialog.asked).toEqual([]);
  });

  it('refuses calls that do not carry what they should', async () => {
    await started();
    for (const given of [[], ['a'], ['a', 1], ['a', 'b'], ['a', bytes('b'), 'c'], [{}, bytes('b')]])
      expect(await electron.ipcRenderer.invoke('host:saveAtlas', ...given)).toMatchObject({
        ok: false,
        reason: 'saveAtlas was called wrongly.',
      });
  });

  it('turns a failing disk into a sentence', async () => {
    const folder = await started();
    electron.dialog.chosen = join(folder, 'missing', 'course.geojson');
    expect(await invokeHost.saveAtlasAs('course.geojson', bytes('{}'))).toEqual({
      ok: false,
      reason: 'course.geojson: there is no such file or folder. Check the name and the folder.',
    });
  });

  it('suggests a name only, never a folder', async () => {
    await started();
    await invokeHost.saveAtlasAs('../../etc/a\\b\\course.geojson', bytes('{}'));
    expect(electron.dialog.asked).toMatchObject([{ defaultPath: 'course.geojson' }]);
  });

  it('keeps a file of another format, byte for byte', async () => {
    const folder = await started();
    const bytes = new Uint8Array([0x49, 0x49, 42, 0, 255]);
    expect(await invokeHost.keepFile('../hole-2.tif', bytes)).toEqual({ ok: true, value: false });
    electron.dialog.chosen = join(folder, 'hole-2.tif');
    expect(await invokeHost.keepFile('../hole-2.tif', bytes)).toEqual({ ok: true, value: true });
    expect(new Uint8Array(readFileSync(join(folder, 'hole-2.tif')))).toEqual(bytes);
    expect(electron.dialog.asked.at(-1)).toMatchObject({
      defaultPath: 'hole-2.tif',
      filters: [{ name: 'TIF', extensions: ['tif'] }],
    });
    expect(await electron.ipcRenderer.invoke('host:keepFile', 'a.tif', 'text')).toMatchObject({ ok: false });
  });

  it('prints a page at its own size from an address that is gone afterwards', async () => {
    const folder = await started();
    electron.dialog.chosen = join(folder, 'playbook.pdf');
    let served = '';
    let address = '';
    electron.BrowserWindow.onLoad = async (url) => {
      const page = await electron.protocol.fetch(url);
      served = await page.text();
      address = url;
      expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
    };
    expect(await invokeHost.printPlaybook('<p>Hole 1</p>', 'playbook.html')).toEqual({
      ok: true,
      value: null,
    });
    expect(electron.dialog.asked).toMatchObject([{ defaultPath: 'playbook.pdf' }]);
    expect(served).toBe('<p>Hole 1</p>');
    expect(readFileSync(join(folder, 'playbook.pdf'), 'latin1')).toBe('%PDF-stub');
    const printer = electron.BrowserWindow.made[1];
    expect(printer?.options['webPreferences']).toMatchObject({ sandbox: true, javascript: false });
    expect(printer?.webContents.pdfOptions).toEqual([
      { preferCSSPageSize: true, printBackground: true, generateTaggedPDF: true },
    ]);
    expect(printer?.destroyed).toBe(true);
    expect((await electron.protocol.fetch(address)).status).toBe(404);
  });
});

describe('the bridge into the page', () => {
  it('holds the host and nothing else', async () => {
    await import('../../../main/preload/preload.ts');
    expect([...electron.contextBridge.exposed.keys()]).toEqual(['swaleHost']);
    expect(Object.keys(electron.contextBridge.exposed.get('swaleHost') ?? {}).sort()).toEqual([
      'keepFile',
      'onCommand',
      'openAtlas',
      'printPlaybook',
      'sampleAtlas',
      'saveAtlas',
      'saveAtlasAs',
    ]);
  });
});

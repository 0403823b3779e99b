import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type LaunchOptions,
  type Page,
} from 'playwright-core';
import { findChromium } from '../../../main/cli/findChromium.ts';
import { type LoopbackHost, startLoopbackHost } from '../../../main/web/loopbackHost.ts';

const built = resolve(import.meta.dirname, '..', '..', '..', 'out', 'renderer');

export interface OpenSwale {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly url: string;
  /** Errors of the page and its console, in order: a test should end with none. */
  readonly problems: readonly string[];
  close(): Promise<void>;
  /** Ends the browser at once, as a power cut would; it is closed afterwards. */
  kill(): Promise<void>;
}

export interface OpenOptions extends Pick<
  BrowserContextOptions,
  'viewport' | 'colorScheme' | 'acceptDownloads'
> {
  /** Folder of the browser's data, kept by the caller: to close the browser and come back to what it stored. */
  readonly profile?: string;
  /** A host that is running already; what a page stored belongs to its address. */
  readonly host?: LoopbackHost;
  /** What is to be arranged before the window is loaded. */
  readonly beforeOpening?: (context: BrowserContext) => Promise<unknown>;
}

/** Serves the built window on a port of its own. */
export async function serveBuilt(): Promise<LoopbackHost> {
  if (!existsSync(join(built, 'index.html'))) throw new Error('Run "npm run build" before these tests.');
  return startLoopbackHost(built, 0);
}

/** Opens the built window in the system's Chromium, with nothing stored unless by an earlier use of its profile. */
export async function openSwale(options: OpenOptions = {}): Promise<OpenSwale> {
  const { profile, host: given, beforeOpening, ...contextOptions } = options;
  const host = given ?? (await serveBuilt());
  const settings = { viewport: { width: 1440, height: 900 }, ...contextOptions };
  const context =
    profile === undefined
      ? await (await sharedBrowser()).newContext(settings)
      : await chromium.launchPersistentContext(profile, { ...launching(), ...settings });
  const page = context.pages()[0] ?? (await context.newPage());
  const problems: string[] = [];
  page.on('pageerror', (error) => problems.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') problems.push(message.text());
  });
  await beforeOpening?.(context);
  await page.goto(host.url);
  return {
    page,
    context,
    url: host.url,
    problems,
    async kill() {
      const closed = context.waitForEvent('close');
      const session = await context.newCDPSession(page);
      session.send('Browser.crash').catch(() => undefined);
      await closed;
    },
    async close() {
      await context.close();
      if (given === undefined) await host.close();
      if (profile === undefined) letGo();
    },
  };
}

/** How long a browser that shows nothing stays for the next test, ms. */
const LINGERS_MS = 2000;
let browser: Promise<Browser> | null = null;
let users = 0;
let leaving: ReturnType<typeof setTimeout> | undefined;

/** One browser for the tests of a file, since starting one takes longer than most of them; a context shares nothing. */
function sharedBrowser(): Promise<Browser> {
  users += 1;
  clearTimeout(leaving);
  browser ??= chromium.launch(launching());
  return browser;
}

function letGo(): void {
  users -= 1;
  if (users > 0) return;
  leaving = setTimeout(() => {
    void browser?.then((it) => it.close());
    browser = null;
  }, LINGERS_MS);
}

function launching(): LaunchOptions {
  const executablePath = findChromium(process.env);
  if (executablePath === null) throw new Error('No Chromium: install it, or set CHROME_PATH.');
  const flags = process.env['CHROMIUM_FLAGS'];
  const args = [
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ...(flags === undefined ? [] : [flags]),
  ];
  return { executablePath, headless: true, args };
}

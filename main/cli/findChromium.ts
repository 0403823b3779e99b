import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** The one without a window starts in half the time, and here nothing is shown. */
const names = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
];
const elsewhere: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

/** The Chromium of this system, or a browser built on it; CHROME_PATH names another. Null where there is none. */
export function findChromium(
  env: NodeJS.ProcessEnv,
  platform: NodeJS.Platform = process.platform,
): string | null {
  const named = env['CHROME_PATH'];
  if (named !== undefined && named !== '') return existsSync(named) ? named : null;
  const folders = [...(env['PATH'] ?? '').split(delimiter), '/usr/bin'].filter((folder) => folder !== '');
  const candidates = [
    ...folders.flatMap((folder) => names.map((name) => join(folder, name))),
    ...(elsewhere[platform] ?? []),
  ];
  return candidates.find((path) => existsSync(path)) ?? null;
}

import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Whether programs started from here can show a window. */
export function hasDisplay(platform: NodeJS.Platform, env: NodeJS.ProcessEnv): boolean {
  if (platform === 'darwin' || platform === 'win32') return true;
  return Boolean(env['DISPLAY']) || Boolean(env['WAYLAND_DISPLAY']);
}

/** The command that opens a page in the default browser, or null where there is none to open it for. */
export function browserCommand(
  url: string,
  platform: NodeJS.Platform,
  env: NodeJS.ProcessEnv,
): readonly [command: string, ...rest: string[]] | null {
  if (env['CI'] !== undefined && env['CI'] !== '' && env['CI'] !== 'false') return null;
  if (!hasDisplay(platform, env)) return null;
  if (platform === 'darwin') return ['open', url];
  if (platform === 'win32') return ['cmd', '/c', 'start', '', url];
  const opener = (env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, 'xdg-open'))
    .find((path) => existsSync(path));
  return opener === undefined ? null : [opener, url];
}

/** Opens the default browser, if there is one; failing to is no error, since the address has been printed. */
export function openBrowser(url: string): void {
  const found = browserCommand(url, process.platform, process.env);
  if (found === null) return;
  const [command, ...rest] = found;
  const child = spawn(command, rest, { detached: true, stdio: 'ignore' });
  child.on('error', () => undefined);
  child.unref();
}

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const platformPaths: Readonly<Partial<Record<NodeJS.Platform, string>>> = {
  darwin: 'Electron.app/Contents/MacOS/Electron',
  win32: 'electron.exe',
};

/** Where the Electron executable should be, and whether it is there. */
export interface ElectronRuntime {
  readonly path: string;
  readonly found: boolean;
}

/**
 * Looks where the electron package itself would, and never fetches anything: ELECTRON_EXEC_PATH names the executable,
 * ELECTRON_OVERRIDE_DIST_PATH the folder it is in, else it lies in node_modules after `npx install-electron`.
 */
export function findElectron(root: string, env: NodeJS.ProcessEnv): ElectronRuntime {
  const path = electronPath(root, env);
  return { path, found: existsSync(path) };
}

function electronPath(root: string, env: NodeJS.ProcessEnv): string {
  const named = env['ELECTRON_EXEC_PATH'];
  if (named !== undefined && named !== '') return named;
  const installed = join(root, 'node_modules', 'electron');
  const override = env['ELECTRON_OVERRIDE_DIST_PATH'];
  const folder = override !== undefined && override !== '' ? override : join(installed, 'dist');
  return join(folder, executable(installed));
}

function executable(installed: string): string {
  try {
    return readFileSync(join(installed, 'path.txt'), 'utf8').trim();
  } catch {
    return platformPaths[process.platform] ?? 'electron';
  }
}

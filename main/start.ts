import { spawn, spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { isBuildStale } from './build-state.ts';
import { findElectron } from './find-electron.ts';
import { hasDisplay, openBrowser } from './open-browser.ts';
import { portFrom, startLoopbackHost } from './web/loopbackHost.ts';

/**
 * `npm start`: builds what is out of date, then opens the desktop program; where its runtime can neither be found nor
 * fetched, or there is no display, says so in one line and serves the same window to a browser on this machine.
 */
const root = resolve(import.meta.dirname, '..');
const FETCH_CAP_MS = 5 * 60_000;
/** The loader's exit code when a system library is missing. */
const CANNOT_RUN = 127;

try {
  process.exitCode = await start();
} catch (error) {
  process.stderr.write(`swale: ${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}

async function start(): Promise<number> {
  const port = portFrom(process.env['PORT']);
  if (isBuildStale(root)) build();
  const reason = process.argv.includes('--web') ? 'asked for with --web' : await openDesktop();
  if (typeof reason === 'number') return reason;
  await serve(port, reason);
  return 0;
}

function build(): void {
  process.stderr.write('Building Swale …\n');
  const tool = join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js');
  const result = spawnSync(process.execPath, [tool, 'build', '--logLevel', 'warn'], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  if (result.status !== 0) throw new Error('The build failed; see above.');
}

/** Runs the desktop program to its end and gives its exit code, or the reason why it cannot be run. */
async function openDesktop(): Promise<number | string> {
  if (!hasDisplay(process.platform, process.env)) return 'no display';
  if (!findElectron(root, process.env).found) fetchElectron();
  const runtime = findElectron(root, process.env);
  if (!runtime.found) return 'no Electron runtime';
  // Chromium's sandbox refuses to run as root.
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const code = await run(runtime.path, [...asRoot, root]);
  return code === null || code === CANNOT_RUN ? 'the Electron runtime does not run on this system' : code;
}

function fetchElectron(): void {
  if (process.env['ELECTRON_SKIP_BINARY_DOWNLOAD']) return;
  process.stderr.write(
    'Fetching the Electron runtime, once (ELECTRON_SKIP_BINARY_DOWNLOAD=1 goes without) …\n',
  );
  spawnSync(process.execPath, [join(root, 'node_modules', 'electron', 'install.js')], {
    timeout: FETCH_CAP_MS,
    stdio: 'ignore',
  });
}

/** Exit code of a program sharing this terminal, or null where it could not be started. */
function run(command: string, args: readonly string[]): Promise<number | null> {
  return new Promise((done) => {
    const child = spawn(command, args, { stdio: 'inherit' });
    child.on('error', () => done(null));
    child.on('exit', (code, signal) => done(signal === null ? code : 1));
  });
}

async function serve(port: number, reason: string): Promise<void> {
  const host = await startLoopbackHost(join(root, 'out', 'renderer'), port);
  process.stdout.write(
    `No desktop window (${reason}): Swale is at ${host.url} in your browser until Ctrl+C.\n`,
  );
  openBrowser(host.url);
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      void host.close();
    });
}

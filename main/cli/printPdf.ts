import { spawn } from 'node:child_process';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const CAP_MS = 120_000;

/**
 * Prints a self-contained page to PDF with a Chromium, at the size the page's own style gives it. Throws an Error with
 * what the browser said.
 */
export async function printPdf(chromium: string, htmlPath: string, pdfPath: string): Promise<void> {
  // A profile of its own: with the person's, a browser that is already open would take the job and drop it.
  const profile = await mkdtemp(join(tmpdir(), 'swale-print-'));
  try {
    const said = await run(chromium, [
      '--headless',
      '--disable-gpu',
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []), // Chromium's sandbox refuses to run as root
      '--no-first-run',
      '--disable-extensions',
      '--disable-background-networking',
      `--user-data-dir=${profile}`,
      '--no-pdf-header-footer',
      `--print-to-pdf=${pdfPath}`,
      pathToFileURL(htmlPath).href,
    ]);
    const written = await stat(pdfPath).catch(() => null);
    if (written === null || written.size === 0) throw new Error(`Chromium wrote no PDF. ${said}`.trim());
  } finally {
    await rm(profile, { recursive: true, force: true, maxRetries: 3 });
  }
}

/** Last line a program said on stderr, once it has ended well. */
function run(command: string, args: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { stdio: ['ignore', 'ignore', 'pipe'], timeout: CAP_MS });
    let said = '';
    child.stderr.setEncoding('utf8').on('data', (part: string) => (said = (said + part).slice(-2000)));
    child.on('error', reject);
    child.on('close', (code) => {
      const last = said.trim().split('\n').at(-1) ?? '';
      if (code === 0) resolve(last);
      else
        reject(
          new Error(`Chromium ended with ${code === null ? 'a time-out' : String(code)}. ${last}`.trim()),
        );
    });
  });
}

import { readFile } from 'node:fs/promises';
import { extname, join, resolve, sep } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.geojson': 'application/geo+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};

/**
 * Answers one request with a file under `root`: the one way by which the desktop program (app:) and the loopback host
 * (http:) hand out the window. `/` is index.html. Anything outside `root`, or not a file, is 404.
 */
export async function serveFrom(
  root: string,
  url: string,
  headers: Readonly<Record<string, string>>,
): Promise<Response> {
  const plain = (status: number, text: string): Response =>
    new Response(text, { status, headers: { ...headers, 'Content-Type': 'text/plain; charset=utf-8' } });

  const file = fileUnder(root, url);
  if (file === null) return plain(404, 'Not found');
  try {
    const body = await readFile(file);
    return new Response(new Uint8Array(body), {
      headers: {
        ...headers,
        'Content-Type': types[extname(file)] ?? 'application/octet-stream',
        // Built assets carry a hash of their content in their name.
        'Cache-Control': file.startsWith(join(root, 'assets') + sep)
          ? 'public, max-age=31536000, immutable'
          : 'no-cache',
      },
    });
  } catch {
    return plain(404, 'Not found');
  }
}

function fileUnder(root: string, url: string): string | null {
  let path: string;
  try {
    path = decodeURIComponent(new URL(url).pathname);
  } catch {
    return null;
  }
  if (path.includes('\0') || path.includes('\\')) return null;
  const file = resolve(root, `.${path.endsWith('/') ? `${path}index.html` : path}`);
  return file.startsWith(resolve(root) + sep) ? file : null;
}

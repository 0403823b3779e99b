import type { Protocol } from 'electron';
import { pageHeaders } from '../pages/pageHeaders.ts';
import { serveFrom } from '../pages/serveFrom.ts';
import { isWindowUrl, PRINT_ORIGIN, SCHEME } from './address.ts';

/** A printed page carries all it needs in itself, and runs nothing. */
const printHeaders = {
  'Content-Type': 'text/html; charset=utf-8',
  'Content-Security-Policy':
    "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:; base-uri 'none'; form-action 'none'",
  'X-Content-Type-Options': 'nosniff',
};

/** Answers the window's addresses from the built files, and print addresses from `printable`, by their last part. */
export function answerPages(protocol: Protocol, root: string, printable: ReadonlyMap<string, string>): void {
  protocol.handle(SCHEME, (request) => {
    if (isWindowUrl(request.url)) return serveFrom(root, request.url, pageHeaders);
    const page = request.url.startsWith(`${PRINT_ORIGIN}/`)
      ? printable.get(request.url.slice(PRINT_ORIGIN.length + 1))
      : undefined;
    if (page === undefined) return new Response('Not found', { status: 404 });
    return new Response(page, { headers: printHeaders });
  });
}

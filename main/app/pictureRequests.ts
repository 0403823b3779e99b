import type { Session } from 'electron';
import { WINDOW_URL } from './address.ts';

/**
 * Servers of map pictures ask who fetches: each request for one says which program it is, by its own name and by the page
 * that shows it, which the browser inside would leave out for an address that is not of the web. What the servers allow to
 * be kept is kept by the session on the disk and asked for again only when it is stale, as their headers say (RFC 9111).
 */
export function nameOurselves(session: Session, version: string): void {
  session.webRequest.onBeforeSendHeaders({ urls: ['https://*/*', 'http://*/*'] }, (details, answer) => {
    if (details.resourceType !== 'image') {
      answer({});
      return;
    }
    answer({
      requestHeaders: {
        ...details.requestHeaders,
        'User-Agent': `Swale/${version} (desktop atlas)`,
        Referer: WINDOW_URL,
      },
    });
  });
}

import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { pageHeaders } from '../pages/pageHeaders.ts';
import { serveFrom } from '../pages/serveFrom.ts';

/** Fixed, because a browser keeps saved work by address and port: under another port it would seem to be gone. */
export const DEFAULT_PORT = 41730;
const ADDRESS = '127.0.0.1';

export interface LoopbackHost {
  readonly url: string;
  close(): Promise<void>;
}

/** The port asked for in the environment, or the usual one; throws an Error with a sentence for the person. */
export function portFrom(text: string | undefined): number {
  if (text === undefined || text === '') return DEFAULT_PORT;
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new Error(`PORT is "${text}": give a whole number from 1 to 65535.`);
  return port;
}

/**
 * Serves the built window to this machine alone. Files go out and nothing comes in: what a page cannot do by itself
 * (choose a file, save, print) its browser does. Rejects with a sentence for the person when the port is taken.
 */
export async function startLoopbackHost(root: string, port: number): Promise<LoopbackHost> {
  const server = createServer((request, response) => {
    answer(root, server, request, response).catch(() => {
      response.writeHead(500).end();
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(explain(error, port)));
    server.listen(port, ADDRESS, resolve);
  });
  return {
    url: `http://${ADDRESS}:${portOf(server)}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

const portOf = (server: Server): number => (server.address() as AddressInfo).port; // listening on TCP: never a string

function explain(error: NodeJS.ErrnoException, port: number): Error {
  if (error.code === 'EADDRINUSE')
    return new Error(
      `Port ${port} is taken. Swale may already be open at http://${ADDRESS}:${port}/; if another program has the port, set PORT to a free one (work saved in the browser belongs to its port).`,
    );
  if (error.code === 'EACCES')
    return new Error(`Port ${port} may not be used here. Set PORT to one above 1023.`);
  return error;
}

async function answer(
  root: string,
  server: Server,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  // A page of another site can make a browser send requests here under its own name (DNS rebinding).
  const own = [ADDRESS, 'localhost'].map((name) => `${name}:${portOf(server)}`);
  if (!own.includes(request.headers.host ?? '')) {
    refuse(response, 403, 'Wrong host');
    return;
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    refuse(response, 405, 'Only GET');
    return;
  }

  const page = await serveFrom(root, `http://${ADDRESS}${request.url ?? '/'}`, pageHeaders);
  const body = Buffer.from(await page.arrayBuffer());
  response.writeHead(page.status, { ...Object.fromEntries(page.headers), 'content-length': body.byteLength });
  response.end(request.method === 'HEAD' ? undefined : body);
}

function refuse(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, { ...pageHeaders, 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(text);
}

import { mkdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { DEFAULT_PORT, portFrom, startLoopbackHost } from '../../../main/web/loopbackHost.ts';
import { temporaryFolder } from '../../helpers/temporaryFolder.ts';

async function served(): Promise<{ url: string; port: number }> {
  const folder = temporaryFolder();
  const root = join(folder, 'renderer');
  mkdirSync(join(root, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'renderer-secret.txt'), 'secret');
  writeFileSync(join(root, 'index.html'), '<title>Swale</title>');
  writeFileSync(join(root, 'assets', 'index-1a2b.js'), 'export {};');
  const host = await startLoopbackHost(root, 0);
  onTestFinished(() => host.close());
  return { url: host.url, port: Number(new URL(host.url).port) };
}

/** A request sent exactly as written: fetch would tidy the path and set the host. */
function ask(
  port: number,
  path: string,
  headers: Record<string, string> = {},
  method = 'GET',
): Promise<{ status: number; body: string }> {
  return new Promise((done, fail) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers }, (answer) => {
      let body = '';
      answer.setEncoding('utf8');
      answer.on('data', (part: string) => (body += part));
      answer.on('end', () => done({ status: answer.statusCode ?? 0, body }));
    });
    sent.on('error', fail);
    sent.end();
  });
}

it('serves the window, isolated and under strict rules', async () => {
  const { url } = await served();
  const page = await fetch(url);
  expect(await page.text()).toBe('<title>Swale</title>');
  expect(Object.fromEntries(page.headers)).toMatchObject({
    'content-type': 'text/html; charset=utf-8',
    'cache-control': 'no-cache',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-embedder-policy': 'credentialless',
    'x-content-type-options': 'nosniff',
  });
  const script = await fetch(`${url}assets/index-1a2b.js`);
  expect(script.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
  expect(script.headers.get('cache-control')).toContain('immutable');
});

it('answers its own names only', async () => {
  const { port } = await served();
  expect(await ask(port, '/', { host: `localhost:${port}` })).toMatchObject({ status: 200 });
  for (const host of ['swale.example', `swale.example:${port}`, '127.0.0.1', `127.0.0.1:${port + 1}`])
    expect(await ask(port, '/', { host }), host).toMatchObject({ status: 403 });
});

it('hands out nothing from outside the built window', async () => {
  const { port } = await served();
  const paths = [
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/..%2frenderer-secret.txt',
    '/..%5csecret.txt',
    '//etc/passwd',
    '/assets',
    '/%00',
    '/%',
  ];
  for (const path of paths) {
    const answer = await ask(port, path);
    expect(answer.status, path).toBe(404);
    expect(answer.body).not.toContain('secret');
  }
});

it('takes nothing in', async () => {
  const { port } = await served();
  for (const method of ['POST', 'PUT', 'DELETE'])
    expect(await ask(port, '/', {}, method)).toMatchObject({ status: 405 });
  expect(await ask(port, '/', {}, 'HEAD')).toEqual({ status: 200, body: '' });
});

it('says plainly that its port is taken', async () => {
  const { port } = await served();
  await expect(startLoopbackHost('/nowhere', port)).rejects.toThrow(`Port ${port} is taken.`);
});

it('takes its port from the environment', () => {
  expect(portFrom(undefined)).toBe(DEFAULT_PORT);
  expect(portFrom('8080')).toBe(8080);
  for (const text of ['http', '70000', '-1', '80.5']) expect(() => portFrom(text)).toThrow('whole number');
});

import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { request, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { listenFrom, staticServer } from '../../src/cli/static-server.ts';

let top: string;
let server: Server;
let port: number;

beforeAll(async () => {
  top = await mkdtemp(join(tmpdir(), 'serve-'));
  await mkdir(join(top, 'site', 'lesson'), { recursive: true });
  await writeFile(join(top, 'secret.txt'), 'not to be served');
  await writeFile(join(top, 'site', 'index.html'), 'home');
  await writeFile(join(top, 'site', '404.html'), 'no such page');
  await writeFile(join(top, 'site', 'app.js'), 'export {};');
  await writeFile(join(top, 'site', 'lesson', 'index.html'), 'lesson');
  server = staticServer(join(top, 'site'));
  port = await listenFrom(server, 0, '127.0.0.1');
});

afterAll(async () => {
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
  await rm(top, { recursive: true });
});

/** Asks with the path exactly as written; a URL object would tidy up the dots first. */
function get(
  path: string,
  method = 'GET',
): Promise<{ status: number; type: string; to: string; body: string }> {
  return new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port, path, method }, (response) => {
      let body = '';
      response.on('data', (chunk: Buffer) => (body += chunk.toString()));
      response.on('end', () => {
        const { 'content-type': type = '', location: to = '' } = response.headers;
        resolve({ status: response.statusCode ?? 0, type, to, body });
      });
    })
      .on('error', reject)
      .end();
  });
}

test('a folder answers with its page, a script with the type a browser insists on', async () => {
  expect(await get('/')).toMatchObject({ status: 200, type: 'text/html; charset=utf-8', body: 'home' });
  expect(await get('/lesson/?step=2')).toMatchObject({ status: 200, body: 'lesson' });
  expect(await get('/app.js')).toMatchObject({ status: 200, type: 'text/javascript; charset=utf-8' });
});

test('a folder without its last slash is redirected on this host, what was asked kept', async () => {
  expect(await get('/lesson?step=2')).toMatchObject({ status: 308, to: '/lesson/?step=2' });
  expect(await get('//lesson')).toMatchObject({ status: 308, to: '/lesson/' });
});

test('what is not there answers 404 with the page for it', async () => {
  for (const path of ['/none', '/app.js/', '/lesson/none.js', '/%zz', '/%00']) {
    expect(await get(path), path).toMatchObject({ status: 404, body: 'no such page' });
  }
});

test('nothing outside the folder is served, however it is asked for', async () => {
  for (const path of [
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/lesson/..%5c..%5csecret.txt',
  ]) {
    expect((await get(path)).body, path).not.toContain('not to be served');
  }
});

test('only reading is allowed', async () => {
  expect((await get('/', 'POST')).status).toBe(405);
  expect(await get('/', 'HEAD')).toMatchObject({ status: 200, body: '' });
});

test('a port that is taken is passed over', async () => {
  const other = staticServer(top);
  const found = await listenFrom(other, port, '127.0.0.1');
  await new Promise((resolve) => other.close(resolve));
  expect(found).toBeGreaterThan(port);
});

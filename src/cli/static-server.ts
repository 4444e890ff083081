import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.md': 'text/markdown; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.pdf': 'application/pdf',
  '.png': 'image/png',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
};

/** A server for the files of one folder, not yet listening. Nothing outside the folder can be asked for. */
export function staticServer(folder: string): Server {
  return createServer((request, response) => {
    answer(folder, request, response).catch(() => {
      if (!response.headersSent) response.writeHead(500, { 'content-type': 'text/plain; charset=utf-8' });
      response.end('The file could not be read.\n');
    });
  });
}

/** Starts listening on the first free port from `port` on (at most 50 are tried); gives the port that was free. */
export async function listenFrom(server: Server, port: number, host: string): Promise<number> {
  for (let tried = port; tried < port + 50; tried += 1) {
    if (await tryListen(server, tried, host)) {
      const address = server.address();
      return typeof address === 'object' && address !== null ? address.port : tried;
    }
  }
  throw new Error(`No free port between ${port} and ${port + 49}.`);
}

function tryListen(server: Server, port: number, host: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const onError = (error: NodeJS.ErrnoException): void => {
      server.off('listening', onListening);
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    };
    const onListening = (): void => {
      server.off('error', onError);
      resolve(true);
    };
    server.once('error', onError);
    server.once('listening', onListening);
    server.listen(port, host);
  });
}

async function answer(folder: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { allow: 'GET, HEAD' }).end();
    return;
  }
  const url = new URL('http://localhost' + (request.url ?? '/'));
  const path = safePath(url.pathname);
  const found = path === undefined ? undefined : await lookUp(folder, path);
  if (found === 'folder-without-slash') {
    // The leading slashes are folded, so that '//elsewhere' cannot turn into an address of another host.
    response.writeHead(308, { location: url.pathname.replace(/^\/+/, '/') + '/' + url.search }).end();
    return;
  }
  if (found !== undefined) return send(found, 200, request, response);
  const page = await lookUp(folder, '/404.html');
  if (page !== undefined && page !== 'folder-without-slash') return send(page, 404, request, response);
  response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('There is no such page.\n');
}

/** The path asked for, decoded; undefined where it is malformed or climbs out of the folder. */
function safePath(pathname: string): string | undefined {
  try {
    const decoded = decodeURIComponent(pathname);
    if (decoded.includes('\0') || decoded.split(/[/\\]/).includes('..')) return undefined;
    return decoded;
  } catch {
    return undefined;
  }
}

async function lookUp(folder: string, path: string): Promise<string | 'folder-without-slash' | undefined> {
  const file = normalize(join(folder, path.split('/').join(sep)));
  const about = await stat(file).catch(() => undefined);
  if (about?.isFile() === true && !path.endsWith('/')) return file;
  if (about?.isDirectory() !== true) return undefined;
  const index = join(file, 'index.html');
  if ((await stat(index).catch(() => undefined))?.isFile() !== true) return undefined;
  return path.endsWith('/') ? index : 'folder-without-slash';
}

function send(file: string, status: number, request: IncomingMessage, response: ServerResponse): void {
  const immutable = file.includes(join('_app', 'immutable') + sep);
  response.writeHead(status, {
    'content-type': TYPES[extname(file).toLowerCase()] ?? 'application/octet-stream',
    // Names under immutable/ carry a hash of their content; everything else is asked for again.
    'cache-control': immutable ? 'public, max-age=31536000, immutable' : 'no-cache',
    'x-content-type-options': 'nosniff',
  });
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
}

/// <reference no-default-lib="true" />
/// <reference lib="esnext" />
/// <reference lib="webworker" />

import { build, files, prerendered, version } from '$service-worker';

const worker = globalThis as unknown as ServiceWorkerGlobalScope;

const PREFIX = 'pin-and-pivot-';
const cacheName = PREFIX + version;
// The pictures are for those who read about the project; no page shows them.
const precached = [...build, ...files.filter((path) => !path.includes('/pictures/')), ...prerendered];

/**
 * The whole app is fetched once, at the first visit, into a cache of its own version; from then on pages and scripts
 * come from there. So what is on the screen is always of one version, works without a network, and never waits for a
 * bad one. A newer version is fetched in the background and takes over once every tab of the old one is closed.
 */
worker.addEventListener('install', (event) => {
  event.waitUntil(
    caches.open(cacheName).then((cache) =>
      // 'no-cache' asks the server again, so that a page kept by the browser's own cache is not mixed in.
      cache.addAll(precached.map((path) => new Request(path, { cache: 'no-cache' }))),
    ),
  );
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(removeOldCaches().then(() => worker.clients.claim()));
});

worker.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== worker.location.origin) return;
  if (precached.includes(url.pathname)) {
    event.respondWith(fromCache(url.pathname, event.request));
  } else if (event.request.mode === 'navigate' && precached.includes(url.pathname + '/')) {
    event.respondWith(Response.redirect(url.pathname + '/' + url.search, 302));
  }
});

async function fromCache(path: string, request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  // A browser short of space may have dropped the cache; the network is then the only source left.
  return (await cache.match(path)) ?? fetch(request);
}

async function removeOldCaches(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== cacheName);
  await Promise.all(old.map((name) => caches.delete(name)));
}

/// <reference lib="webworker" />
import { homeFile } from './home-file.ts';
import { keepShared, sharedPath } from './shared-files.ts';

declare const __files: readonly string[];
declare const __version: string;

const scope = globalThis as unknown as ServiceWorkerGlobalScope;
const prefix = 'evenhand-page-';
const cacheName = prefix + __version;

/** A file's address. The page itself is asked for by its folder. */
const addressOf = (file: string) => new URL(file, scope.registration.scope).href;
const home = () => addressOf('index.html');

/** Names that carry a digest never change what they mean. */
const unchanging = (file: string) => /^assets\/.*-[\w-]{8}\.\w+$/.test(file);

async function fill(): Promise<void> {
  const cache = await caches.open(cacheName);
  await Promise.all(
    __files.map(async (file) => {
      const address = addressOf(file);
      const there = unchanging(file) ? await caches.match(address) : undefined;
      const response = there ?? (await fetch(address, { cache: unchanging(file) ? 'default' : 'reload' }));
      if (!response.ok) throw new Error(`${file}: ${response.status}`);
      await cache.put(address, response);
    }),
  );
}

/** The version before stays: another tab may still run it, and ask for a part that it hasn't loaded yet. */
async function dropOlder(): Promise<void> {
  const older = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== cacheName);
  await Promise.all(older.slice(0, -1).map((name) => caches.delete(name)));
  await scope.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  const asked = request.mode === 'navigate' ? home() : request;
  const there = await cache.match(asked, { ignoreSearch: true });
  return there ?? (await caches.match(asked)) ?? fetch(request);
}

/** What a host says of its library is asked anew each time; without the host there is no answer. */
const withoutHost = () => Response.json({ library: 'unknown' });

// A new version waits until no page of the old one is open, or until the page says that nothing is going on.
scope.addEventListener('install', (event) => event.waitUntil(fill()));
scope.addEventListener('activate', (event) => event.waitUntil(dropOlder()));
scope.addEventListener('message', ({ data }) => {
  if (data === 'take-over') void scope.skipWaiting();
});
scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (origin !== scope.location.origin) return;
  if (request.method === 'POST' && pathname.endsWith(sharedPath)) event.respondWith(keepShared(request));
  else if (pathname.endsWith(`/${homeFile}`)) event.respondWith(fetch(request).catch(withoutHost));
  else if (request.method === 'GET') event.respondWith(answer(request));
});

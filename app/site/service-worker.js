// Keeps the page in the browser, so that it opens without a network. The build puts in its number
// and its files (tests/xtask/src/offline.rs). One worker serves one build and never mixes two: a
// newer one waits until the person starts it or no page of the older one is open.
const BUILD = 'none';
const FILES = [];

const CACHES = 'leverwright/build/';
const CACHE = CACHES + BUILD;
const FOLDER = new URL('./', self.location).href;

self.addEventListener('install', (event) => {
  // Asked of the server, not of the browser's own memory, which may hold files of an older build.
  const fresh = FILES.map((file) => new Request(file, { cache: 'reload' }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(fresh)));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(forgetOlder().then(() => self.clients.claim()));
});

async function forgetOlder() {
  for (const name of await caches.keys()) {
    if (name.startsWith(CACHES) && name !== CACHE) await caches.delete(name);
  }
}

self.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  const file = method === 'GET' ? fileOf(url) : undefined;
  if (file !== undefined) event.respondWith(kept(file, event.request));
});

// The file that an address means, if it is one of this build.
function fileOf(address) {
  const url = new URL(address);
  const path = url.origin + url.pathname;
  if (!path.startsWith(FOLDER)) return undefined;
  const file = path.slice(FOLDER.length) || 'index.html';
  return FILES.includes(file) ? file : undefined;
}

async function kept(file, request) {
  const cache = await caches.open(CACHE);
  return await cache.match(file) ?? fetch(request);
}

self.addEventListener('message', (event) => {
  if (event.data === 'start') self.skipWaiting();
});

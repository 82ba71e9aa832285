// Keeps all files of this version, so that the page opens without a network. A new version is fetched whole before it is taken.
self.importScripts('./service-worker-assets.js');

const name = `bench-${self.assetsManifest.version}`;
const kept = /\.(html|js|css|wasm|dat|json|svg|webmanifest)$/;

self.addEventListener('install', (event) =>
  event.waitUntil(
    caches
      .open(name)
      .then((cache) =>
        cache.addAll(
          self.assetsManifest.assets
            .filter(({ url }) => kept.test(url) && !url.endsWith('service-worker.js'))
            .map(({ url, hash }) => new Request(url, { integrity: hash, cache: 'no-cache' })),
        ),
      ),
  ),
);

self.addEventListener('activate', (event) =>
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((other) => other.startsWith('bench-') && other !== name).map((other) => caches.delete(other)))),
  ),
);

self.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  const asked = event.request.mode === 'navigate' ? 'index.html' : event.request;
  event.respondWith(caches.open(name).then(async (cache) => (await cache.match(asked)) ?? fetch(event.request)));
});

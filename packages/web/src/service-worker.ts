/**
 * Keeps the app itself on this machine, so that it starts with no signal. Only the app's own files: the farm's book is kept apart, by the worker,
 * and nothing of `/api` is ever answered from here.
 */

/** Written in by the build: every file of the app, and a mark of them all. */
declare const __APP_FILES__: readonly string[];
declare const __APP_MARK__: string;

interface Extendable extends Event {
  readonly waitUntil: (work: Promise<unknown>) => void;
}
interface Fetching extends Extendable {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}
interface Scope {
  readonly clients: { readonly claim: () => Promise<void> };
  readonly addEventListener: (kind: 'install' | 'activate' | 'fetch', listener: (event: never) => void) => void;
}

const scope = self as unknown as Scope;
const shelf = `leywright-${__APP_MARK__}`;
const page = '/index.html';

scope.addEventListener('install', (event: Extendable) => {
  // Past the browser's own cache: what is kept here has to be of one build.
  const files = __APP_FILES__.map((path) => new Request(path, { cache: 'reload' }));
  event.waitUntil(caches.open(shelf).then((cache) => cache.addAll(files)));
});

// A newer app takes over when the last page of the older one is closed, so no page ever runs with half of each.
scope.addEventListener('activate', (event: Extendable) => {
  const clear = async () => {
    const names = await caches.keys();
    await Promise.all(names.filter((name) => name !== shelf).map((name) => caches.delete(name)));
    await scope.clients.claim();
  };
  event.waitUntil(clear());
});

scope.addEventListener('fetch', (event: Fetching) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin || url.pathname.startsWith('/api/')) return;
  const path = request.mode === 'navigate' ? page : url.pathname;
  event.respondWith(keptOrFetched(path, request));
});

async function keptOrFetched(path: string, request: Request): Promise<Response> {
  const kept = await (await caches.open(shelf)).match(path, { ignoreSearch: true });
  return kept ?? fetch(request);
}

/** What the build says of itself: set in front of this file by `vite/offline.ts`. */
interface Build {
  /** Changes whenever any of the files does. */
  readonly version: string;
  /** Paths of everything that the pages are made of. */
  readonly files: readonly string[];
}
declare const self: ServiceWorkerGlobalScope & { readonly build: Build };

/** The pages' own message: leave nothing to the old version any more. */
const takeOver = 'take-over';
const family = 'rotorwright ';
const own = family + self.build.version;
/** A network that is there but leads nowhere must not keep a page waiting, ms. */
const patience = 3000;

self.addEventListener('install', (event) => event.waitUntil(store()));
self.addEventListener('activate', (event) => event.waitUntil(clear().then(() => self.clients.claim())));
self.addEventListener('message', (event) => {
  if (event.data === takeOver) void self.skipWaiting();
});
self.addEventListener('fetch', (event) => {
  const { method, mode, url } = event.request;
  const { origin, pathname } = new URL(url);
  // What the server knows is asked of the server; the pages keep what they need of it themselves.
  if (method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/')) return;
  event.respondWith(mode === 'navigate' ? page(event.request) : file(event.request));
});

/** Puts all files of this version aside, or fails as a whole: half a version is none. */
async function store(): Promise<void> {
  const cache = await caches.open(own);
  await Promise.all(self.build.files.map(async (path) => {
    // A name with a hash in it never stands for anything else: what the version before has is good.
    const known = path.startsWith('/assets/') ? await caches.match(path) : undefined;
    const answer = known ?? await fetch(path, { cache: 'no-cache' });
    if (!answer.ok) throw new Error(`${path} was answered with ${answer.status}.`);
    await cache.put(path, answer);
  }));
}

async function clear(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(family) && name !== own).map((name) => caches.delete(name)));
}

/** The server's page where it answers in time, so that a new version is never hidden by an old one; else the one that was put aside. */
async function page(request: Request): Promise<Response> {
  const kept = await caches.match('/', { cacheName: own });
  const asked = fetch(request);
  if (kept === undefined) return asked;
  const late = new Promise<undefined>((resolve) => setTimeout(resolve, patience));
  const answer = await Promise.race([asked, late]).catch(() => undefined);
  // A gateway in front of the server answers for it when it is away.
  return answer === undefined || (answer.status >= 502 && answer.status <= 504) ? kept : answer;
}

async function file(request: Request): Promise<Response> {
  return (await caches.match(request, { cacheName: own, ignoreVary: true })) ?? fetch(request);
}

// The page with no signal. A browser runs this script beside the page, even before there is any WebAssembly,
// so it is plain JavaScript. It keeps every file of one release in a cache of that release's own, and answers
// for the network from there. It decides nothing for the reader: a newer release waits until the page says
// "use".

// Both are put in by the build (src/bin/xtask/precache.rs). The list has each file's path and the hash of its
// content: a file that a host changed half-way through an upload, or a gateway swapped, is never kept.
const VERSION = "the version";
const FILES = "the files";

// Other copies of the page may live in other folders of the same host: each clears away its own caches only.
const OURS = `tankful ${registration.scope} `;
const CACHE = OURS + VERSION;

// A name with a hash in it stands for one content for ever.
const HASHED = /-[0-9a-f]{10}\.\w+$/;

// A host's Vary header is about the network; here each address has one content.
const ANY = { ignoreVary: true };

const at = (name) => new URL(name, registration.scope).href;

self.addEventListener("install", (event) => event.waitUntil(install()));

async function install() {
  try {
    const cache = await caches.open(CACHE);
    await Promise.all(FILES.map(([name, integrity]) => keep(cache, name, integrity)));
  } catch (error) {
    const full = error.name === "QuotaExceededError";
    // Half a release is of use to the next attempt, but not where there is no room.
    if (full) await caches.delete(CACHE);
    for (const client of full ? await clients.matchAll({ includeUncontrolled: true }) : []) {
      client.postMessage("full");
    }
    throw error;
  }
}

async function keep(cache, name, integrity) {
  const address = at(name);
  if (await cache.match(address, ANY)) return;
  const before = HASHED.test(name) && (await caches.match(address, ANY));
  // The browser's own cache has what the page has just loaded; names without a hash are asked for anew.
  const response =
    before || (await fetch(address, { integrity, cache: HASHED.test(name) ? "default" : "no-cache" }));
  if (!response.ok) throw new Error(`${response.status} for ${address}`);
  await cache.put(address, proper(name, response));
}

// A response fit to be served again: some hosts send WebAssembly as plain bytes, which a browser will not
// compile while it arrives, and a redirected response is refused where a page is opened.
function proper(name, response) {
  const type = name.endsWith(".wasm") ? "application/wasm" : response.headers.get("content-type") || "";
  if (!response.redirected && response.headers.get("content-type") === type) return response;
  return new Response(response.body, { headers: { "content-type": type } });
}

self.addEventListener("activate", (event) => event.waitUntil(sweep().then(() => clients.claim())));

// Takes away older releases that no page uses any more. An open page holds a lock with the address of its
// first script (boot.js); the release that has this script is in use. While a newer one is being kept, its
// cache is not known here, so nothing is taken away.
async function sweep() {
  if (registration.installing || registration.waiting) return;
  const { held } = await navigator.locks.query();
  const used = new Set(held.map((lock) => lock.name));
  for (const name of await caches.keys()) {
    if (!name.startsWith(OURS) || name === CACHE) continue;
    const files = await (await caches.open(name)).keys();
    if (!files.some((file) => used.has(file.url))) await caches.delete(name);
  }
}

self.addEventListener("message", (event) => {
  if (event.data === "use") event.waitUntil(self.skipWaiting());
  if (event.data === "sweep") event.waitUntil(sweep());
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  // Parts of files, and whatever is not this page's, are the network's.
  const ours = request.url.startsWith(registration.scope);
  if (request.method === "GET" && ours && !request.headers.has("range")) event.respondWith(answer(request));
});

async function answer(request) {
  const address = request.url.split(/[?#]/)[0];
  const opens = address === registration.scope;
  const name = opens ? at("index.html") : address;
  // This release's own first; then older ones, for pages that were open before this one took over.
  const cache = await caches.open(CACHE);
  const kept = (await cache.match(name, ANY)) || (await caches.match(name, ANY));
  if (kept) return kept;
  try {
    return await fetch(request);
  } catch (error) {
    // An address that is no page of ours, with no network to ask: the way in.
    if (request.mode === "navigate" && !opens) return Response.redirect(registration.scope);
    throw error;
  }
}

/**
 * Keeps the pages below its folder for times without a network: pages that write, and the files of the
 * page on which the garden file is written. What is sent is never kept, nor a page that answers a form.
 * Where the server no longer has this script, it takes itself and all that it kept away.
 */
// @ts-nocheck

export const serviceWorker = `const scope = self.registration.scope;
const cacheName = "feedround-pages-1 " + scope;
const patienceMs = 4000;
const isOurs = ({ href, search }) => href.startsWith(scope) && search === "";

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(begin()));
self.addEventListener("message", (event) => {
  const { keep = [] } = event.data || {};
  event.waitUntil(Promise.all(keep.map((address) => new URL(address, scope)).filter(isOurs).map((url) => fetched(url.href).catch(() => undefined))));
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  url.hash = "";
  if (request.method !== "GET" || !url.href.startsWith(scope) || url.href === self.location.href) return;
  const isPage = request.mode === "navigate";
  if (isPage) event.respondWith(pageOf(event, url));
  else if (isOurs(url) && url.pathname.includes("/-/")) event.respondWith(fileOf(request, url));
});

async function begin() {
  for (const name of await caches.keys()) if (name.startsWith("feedround-") && name.endsWith(" " + scope) && name !== cacheName) await caches.delete(name);
  await self.clients.claim();
}

// A page that answers a form says so once: its address without the form is kept by a visit of its own.
async function pageOf(event, url) {
  const address = new URL(url);
  address.search = "";
  const network = isOurs(url) ? fetched(url.href) : fetch(event.request);
  event.waitUntil(network.catch(() => undefined));
  const kept = await keptOf(address.href);
  if (kept === undefined) return network;
  const late = new Promise((done) => setTimeout(done, patienceMs)).then(() => kept);
  const answered = network.then((response) => (response.status >= 500 ? kept : response), () => kept);
  return Promise.race([answered, late]);
}

// A new file and an old one would not fit together: the kept one is for times without a network alone.
async function fileOf(request, url) {
  try {
    const response = await fetch(request);
    if (response.ok) await (await caches.open(cacheName)).put(url.href, response.clone());
    return response;
  } catch (error) {
    const kept = await (await caches.open(cacheName)).match(url.href, { ignoreVary: true });
    if (kept === undefined) throw error;
    return kept;
  }
}

async function fetched(address) {
  const response = await fetch(address, { cache: "no-store", credentials: "same-origin" });
  const cache = await caches.open(cacheName);
  if (response.ok && !response.redirected) await cache.put(address, response.clone());
  if (response.status === 404) {
    await cache.delete(address);
    await goneWithServer();
  }
  return response;
}

async function goneWithServer() {
  const own = await fetch(self.location.href, { cache: "no-store" }).catch(() => undefined);
  if (own === undefined || own.status !== 404) return;
  await caches.delete(cacheName);
  await self.registration.unregister();
}

// The page is told since when it is kept, so that it can say so.
async function keptOf(address) {
  const kept = await (await caches.open(cacheName)).match(address, { ignoreVary: true });
  if (kept === undefined) return undefined;
  const since = kept.headers.get("date");
  const text = await kept.text();
  const body = since === null ? text : text.replace("<html ", '<html data-kept="' + since + '" ');
  return new Response(body, { headers: kept.headers });
}
`;

// The service worker: opens the pages with no laptop and no network at all. BUILD and FILES are written before this by the
// program that serves it (OfflineWorker.cs), from what it serves: [hash, address, other addresses of the same file …].
// Each build has a cache of its own and is served from that one alone, so that two builds never mix.

const PREFIX = "shaftwright ";
const CACHE = PREFIX + BUILD;
const SHELL = "index.html";
const ABREAST = 6;

const at = (path) => new URL(path, registration.scope).href;
const files = new Map();
for (const [hash, address, ...others] of FILES)
  for (const path of [address, ...others]) files.set(at(path), { hash, key: at(address) });

// What is there already was checked when it came; a keeping that was cut short goes on where it stopped.
async function keep() {
  const cache = await caches.open(CACHE);
  const wanted = await missing(cache);
  let kept = FILES.length - wanted.length;
  const next = async () => {
    for (let file = wanted.pop(); file; file = wanted.pop()) {
      const [hash, address] = file;
      const response = await fetch(at(address), { integrity: hash, cache: "no-cache" });
      if (!response.ok) throw new Error(`${address}: ${response.status}`);
      await cache.put(at(address), response);
      kept++;
      if (kept % 10 === 0) await tell({ kept, of: FILES.length });
    }
  };
  try {
    await Promise.all(Array.from({ length: ABREAST }, next));
  } catch (e) {
    wanted.length = 0; // The others stop as well.
    throw e;
  }
}

async function missing(cache) {
  const there = new Set((await cache.keys()).map((request) => request.url));
  return FILES.filter(([, address]) => !there.has(at(address)));
}

async function tell(news) {
  for (const client of await clients.matchAll({ type: "window", includeUncontrolled: true })) client.postMessage(news);
}

addEventListener("install", (event) => event.waitUntil(keep()));

// Only the last build stays: nobody is on the one before any more, or has asked for this one.
addEventListener("activate", (event) =>
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((n) => n.startsWith(PREFIX) && n !== CACHE).map((n) => caches.delete(n)))),
  ),
);

addEventListener("message", (event) => {
  if (event.data === "take over") event.waitUntil(skipWaiting());
  if (event.data === "keep") event.waitUntil(keep().then(() => tell({ kept: FILES.length, of: FILES.length }), () => {}));
  if (event.data === "state") event.waitUntil(state(event.ports[0]));
});

async function state(port) {
  const gone = await missing(await caches.open(CACHE));
  port.postMessage({ build: BUILD, kept: FILES.length - gone.length, of: FILES.length });
}

addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== location.origin || url.href.startsWith(at("api/"))) return;
  if (request.mode === "navigate") {
    // A name with a dot is a file, which is the laptop's to hand out; every other address is a page.
    if (!url.pathname.split("/").pop().includes(".")) event.respondWith(page(request));
    return;
  }
  const file = files.get(url.href);
  if (file) event.respondWith(kept(file, request));
});

async function page(request) {
  // A newer build waits until nobody is on this one. Opening anew, or loading the only page anew, is such a moment.
  const open = await clients.matchAll({ type: "window" });
  if (registration.waiting && (open.length === 0 || (open.length === 1 && request.isReloadNavigation))) {
    registration.waiting.postMessage("take over");
    return new Response("", { headers: { Refresh: "0" } });
  }
  return kept(files.get(at(SHELL)), request);
}

// A browser may have cleared a file. Then only the same file will do: one of another build is refused by its hash.
async function kept(file, request) {
  const cache = await caches.open(CACHE);
  const response = await cache.match(file.key);
  if (response) return response;
  if (request.mode === "navigate") return fetch(request);
  return fetch(request, { integrity: file.hash });
}

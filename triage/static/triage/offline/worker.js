/* The service worker: answers a check's own addresses on the phone, from one set of files that came whole.

   The site writes SET, which names those files, above this (triage/offline/views/service_worker.py), so that a new
   version of anything is a new worker. It is installed only when every file of its set has arrived with the right hash;
   till then, and if it never does, the last good worker goes on. It takes over when a check is begun, never in the
   middle of one. What it cannot answer it leaves to the network. */

import { sendQueued } from "./outbox.js";
import { answerPage } from "./pages/answer_page.js";
import { openSite } from "./pages/request.js";

const scope = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

const SETS = "oven-check-set-";
const CACHE = SETS + SET.version;
const FORMS = "oven-check-forms";
const HASHES = new Map(SET.files.map((file) => [file.url, file.hash]));

/** The first half of a SHA-256, as the set has it. @param {BufferSource} bytes */
async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes), 0, 16);
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** A file as it should be, from the network. Throws where it is not. @param {string} url */
async function fetchFile(url) {
  const response = await fetch(url, { cache: "no-cache" });
  const bytes = await response.arrayBuffer();
  if (!response.ok || (await hashOf(bytes)) !== HASHES.get(url)) throw new Error(`${url} did not arrive whole.`);
  return new Response(bytes, { headers: { "Content-Type": response.headers.get("Content-Type") ?? "text/plain" } });
}

async function install() {
  await caches.delete(CACHE); // what an earlier try left half-written
  const cache = await caches.open(CACHE);
  await Promise.all(SET.files.map(async ({ url }) => cache.put(url, await fetchFile(url))));
}

/** A file of the set. Where the browser threw it away, it is fetched again, for the next time too.
 * @param {string} url */
async function cachedFile(url) {
  const cached = await caches.match(url, { cacheName: CACHE });
  if (cached) return cached;
  const fresh = await fetchFile(url);
  const cache = await caches.open(CACHE);
  await cache.put(url, fresh.clone()).catch(() => {});
  return fresh;
}

/** @param {string} url */
async function readPart(url) {
  let bytes = await (await cachedFile(url)).arrayBuffer();
  if ((await hashOf(bytes)) !== HASHES.get(url)) {
    await caches.open(CACHE).then((cache) => cache.delete(url));
    bytes = await (await cachedFile(url)).arrayBuffer();
  }
  return JSON.parse(new TextDecoder().decode(bytes));
}

/** @type {Promise<import("./pages/request.js").Site> | null} */
let opening = null;

/* What pages are made from, read once in a worker's life; a failure is tried again. */
function openedSite() {
  opening ??= Promise.all([readPart(SET.parts.pack), readPart(SET.parts.pages)])
    .then(([pack, pages]) => openSite(pack, pages))
    .catch((error) => {
      opening = null;
      throw error;
    });
  return opening;
}

async function sitePaths() {
  return (await openedSite()).pages.paths;
}

/** @param {Headers} headers */
function isFragment(headers) {
  return headers.has("HX-Request") && !headers.has("HX-Boosted") && !headers.has("HX-History-Restore-Request");
}

/** @param {URL} url @param {{fragment: boolean, offline: boolean}} how */
async function pageAt(url, { fragment, offline }) {
  const { origin, pathname: path, search } = url;
  const page = answerPage(await openedSite(), {
    path,
    query: search.slice(1),
    fragment,
    offline,
    language: navigator.languages.join(","),
    origin,
  });
  return page && asResponse(page);
}

/** @param {import("./pages/answer_page.js").PageAnswer} page */
function asResponse({ status, html, headers }) {
  if (headers.Location) return Response.redirect(headers.Location, status);
  return new Response(html, { status, headers: { ...SET.headers, ...headers } });
}

/** A page made here, else the site's. @param {Request} request @param {URL} url */
async function answer(request, url) {
  const fragment = isFragment(request.headers);
  const page = await answerHere(url, fragment);
  return page ?? fetch(request).catch((error) => answerOffline(request, url, fragment, error));
}

/** Nothing that goes wrong here may keep somebody from the site's own page. The file for a repairer holds more when the
 * site writes it, so that one is asked for first.
 * @param {URL} url @param {boolean} fragment */
async function answerHere(url, fragment) {
  try {
    const { summary } = await sitePaths();
    return url.pathname === summary ? null : await pageAt(url, { fragment, offline: false });
  } catch (error) {
    console.warn(`The phone could not make ${url.pathname}: ${error.message}`);
    return null;
  }
}

/** What the site would have answered, as far as it can be made here, or the way back to where somebody came from.
 * @param {Request} request @param {URL} url @param {boolean} fragment
 * @param {Error} error why the site was not reached */
async function answerOffline(request, url, fragment, error) {
  const paths = await sitePaths();
  const page = url.pathname === paths.hand_over ? cachedForm(url) : pageAt(url, { fragment, offline: true });
  const made = await page.catch(/** @returns {null} */ () => null);
  if (made) return made;
  if (request.mode !== "navigate" || url.pathname === paths.start) throw error;
  const hash = url.pathname === paths.costs ? "#costs-offline" : "#offline";
  return Response.redirect(`${backFrom(url, paths)}${url.search}${hash}`, 303);
}

/** Back to the check, or to its beginning where none is begun.
 * @param {URL} url @param {Object<string, string>} paths */
function backFrom({ pathname, searchParams }, paths) {
  const begun = pathname.startsWith(paths.step) && pathname !== paths.step && searchParams.has("complaint");
  return begun ? paths.step : paths.start;
}

/** @param {string} region @param {string} firm */
async function formAddress(region, firm) {
  const { blank_form: blank } = await sitePaths();
  return `${blank}?${new URLSearchParams({ region, firm })}`;
}

/** @param {string} address */
async function cacheForm(address) {
  const response = await fetch(address, { cache: "no-cache" });
  const forms = await caches.open(FORMS);
  if (response.ok) await forms.put(address, response);
  else if (response.status === 404) await forms.delete(address);
}

/** A firm's form as it came without answers; its script puts those of its address into it (pages/blank_form.js).
 * @param {URL} url */
async function cachedForm({ searchParams }) {
  const address = await formAddress(searchParams.get("region") ?? "", searchParams.get("firm") ?? "");
  const cached = await caches.match(address, { cacheName: FORMS });
  return cached
    ? new Response(cached.body, { headers: { ...SET.headers, "Content-Type": "text/html; charset=utf-8" } })
    : null;
}

/** @param {{type: string}} message */
async function tellPages(message) {
  for (const page of await scope.clients.matchAll({ type: "window", includeUncontrolled: true }))
    page.postMessage(message);
}

async function sendOutbox() {
  try {
    await sendQueued();
  } finally {
    await tellPages({ type: "outbox" });
  }
}

/* The sets of other versions go; those who were in the middle of a check are told that it was carried over. */
async function activate() {
  const names = (await caches.keys()).filter((name) => name.startsWith(SETS) && name !== CACHE);
  await scope.clients.claim();
  if (names.length) await tellPages({ type: "carried-over" });
  await Promise.all(names.map((name) => caches.delete(name)));
  if (await caches.has(FORMS)) await refreshForms();
}

/* They name scripts of the set that went. */
async function refreshForms() {
  const forms = await (await caches.open(FORMS)).keys();
  await Promise.all(forms.map(({ url }) => cacheForm(url).catch(() => {})));
}

/* What a page may ask for. The names stay as they are: a page of the release before may speak to this worker. */
const MESSAGES = {
  /** @param {{address: string}} message */
  wake: ({ address }) => pageAt(new URL(address), { fragment: true, offline: false }),
  "take-over": () => scope.skipWaiting(),
  /** @param {{region: string, firm: string}} message */
  "keep-form": async ({ region, firm }) => cacheForm(await formAddress(region, firm)),
};

scope.addEventListener("install", (event) => event.waitUntil(install()));
scope.addEventListener("activate", (event) => event.waitUntil(activate()));
scope.addEventListener("sync", (event) => event.waitUntil(sendOutbox()));
scope.addEventListener("message", (event) => {
  const handle = new Map(Object.entries(MESSAGES)).get(event.data?.type);
  if (handle) event.waitUntil(Promise.resolve(handle(event.data)).catch(() => {}));
});

scope.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== scope.location.origin || request.destination === "iframe") return;
  if (HASHES.has(url.pathname)) {
    event.respondWith(cachedFile(url.pathname).catch(() => fetch(request)));
  } else if (request.mode === "navigate" || isFragment(request.headers)) {
    event.respondWith(answer(request, url));
  }
});

scope.addEventListener("notificationclick", (event) => {
  event.notification.close();
  event.waitUntil(scope.clients.openWindow(event.notification.data));
});

/* The service worker: answers a check's own addresses on the phone, from one set of files that came whole.

   The site writes SET, which names those files, above this (triage/offline/views/service_worker.py), so that a new
   version of anything is a new worker. It is installed only when every file of its set has arrived with the right hash; till then,
   and if it never does, the last good worker goes on. It takes over when a check is begun, never in the middle of one.
   What it cannot answer it leaves to the network. */

import { sendWaiting } from "./outbox.js";
import { answerPage } from "./pages/answer_page.js";
import { openSite } from "./pages/visit.js";

const SETS = "oven-check-set-";
const CACHE = SETS + SET.version;
const FORMS = "oven-check-forms";
const START = "/";
const STEP = "/check/";
const COSTS = "/check/costs/";
const SUMMARY = "/check/summary/";
const HAND_OVER = "/check/hand-over/";
const BLANK = "/check/hand-over/blank/";
const HTML = "text/html";
const HASHES = new Map(SET.files.map((file) => [file.url, file.hash]));

/* The first half of a SHA-256, as the set has it. */
async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes), 0, 16);
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/* A file as it should be, from the network. Throws where it is not. */
async function fetchFile(url) {
  const answer = await fetch(url, { cache: "no-cache" });
  const bytes = await answer.arrayBuffer();
  if (!answer.ok || (await hashOf(bytes)) !== HASHES.get(url)) throw new Error(`${url} did not arrive whole.`);
  return new Response(bytes, { headers: { "Content-Type": answer.headers.get("Content-Type") ?? "text/plain" } });
}

async function takeSet() {
  await caches.delete(CACHE); // what an earlier try left half-written
  const cache = await caches.open(CACHE);
  await Promise.all(SET.files.map(async ({ url }) => cache.put(url, await fetchFile(url))));
}

/* A file of the set. Where the browser threw it away, it is fetched again, for the next time too. */
async function fileOf(url) {
  const kept = await caches.match(url, { cacheName: CACHE });
  if (kept) return kept;
  const fresh = await fetchFile(url);
  const cache = await caches.open(CACHE);
  await cache.put(url, fresh.clone()).catch(() => {});
  return fresh;
}

async function partOf(url) {
  let bytes = await (await fileOf(url)).arrayBuffer();
  if ((await hashOf(bytes)) !== HASHES.get(url)) {
    await caches.open(CACHE).then((cache) => cache.delete(url));
    bytes = await (await fileOf(url)).arrayBuffer();
  }
  return JSON.parse(new TextDecoder().decode(bytes));
}

let opening = null;

/* What pages are made from, read once in a worker's life; a failure is tried again. */
function openedSite() {
  opening ??= Promise.all([partOf(SET.parts.pack), partOf(SET.parts.pages)])
    .then(([pack, pages]) => openSite(pack, pages))
    .catch((trouble) => {
      opening = null;
      throw trouble;
    });
  return opening;
}

function isFragment(headers) {
  return headers.has("HX-Request") && !headers.has("HX-Boosted") && !headers.has("HX-History-Restore-Request");
}

async function pageOf(url, fragment) {
  const asked = { path: url.pathname, query: url.search.slice(1), fragment, language: navigator.languages.join(",") };
  const page = answerPage(await openedSite(), { ...asked, origin: self.location.origin });
  return page && responseOf(page);
}

function responseOf({ status, html, headers }) {
  if (headers.Location) return Response.redirect(headers.Location, status);
  return new Response(html, { status, headers: { ...SET.headers, ...headers } });
}

/* A step made here, else the site's. Nothing that goes wrong here may keep somebody from the site's own page. */
async function stepOf(request, url) {
  const here = await pageOf(url, isFragment(request.headers)).catch((trouble) => {
    console.warn(`The phone could not make ${url.pathname}: ${trouble.message}`);
    return null;
  });
  return here ?? siteOf(request, url);
}

async function siteOf(request, url) {
  try {
    return await fetch(request);
  } catch (unreached) {
    const here = await withoutLine(request, url).catch(() => null);
    if (here) return here;
    if (request.mode !== "navigate" || url.pathname === START) throw unreached;
    return Response.redirect(`${backFrom(url)}${url.search}${url.pathname === COSTS ? "#no-costs" : "#no-line"}`, 303);
  }
}

/* A check done for a firm is the site's to answer, and so is the file for a repairer, which holds more when the site
   writes it. With no line both are made here; the firm goes along in each address, without its colours. */
async function withoutLine(request, url) {
  const firm = url.searchParams.get("firm");
  if (firm && url.pathname === HAND_OVER) return blankForm(url);
  const plain = new URL(url);
  plain.searchParams.delete("firm");
  const page = await pageOf(plain, isFragment(request.headers));
  if (!firm || !page || !(page.headers.get("Content-Type") ?? HTML).startsWith(HTML)) return page;
  return forFirm(page, encodeURIComponent(firm));
}

/* The firm goes along in each address, in a form beside the place, and in the way that a page sends somebody on. */
async function forFirm(page, firm) {
  const inAddress = (text, and) => text.replace(/\?region=[\w-]+/g, `$&${and}firm=${firm}`);
  if (page.status === 302) return Response.redirect(inAddress(page.headers.get("Location"), "&"), 302);
  const answer = new Response(
    inAddress(await page.text(), "&amp;")
      .replace(/<input type="hidden" name="region"[^>]*>/g, `$&<input type="hidden" name="firm" value="${firm}">`)
      .replace('id="told"', "$& data-for-firm"), // waiting.js puts the way to the form there
    page,
  );
  const onward = page.headers.get("HX-Redirect");
  if (onward) answer.headers.set("HX-Redirect", inAddress(onward, "&"));
  return answer;
}

/* Where somebody is sent whose page needs the line: back to the check, or to its beginning where none is begun. */
function backFrom({ pathname, searchParams }) {
  return pathname.startsWith(STEP) && pathname !== STEP && searchParams.has("complaint") ? STEP : START;
}

function blankAddress(region, firm) {
  return `${BLANK}?region=${encodeURIComponent(region)}&firm=${encodeURIComponent(firm)}`;
}

async function keepForm({ region, firm }) {
  const address = blankAddress(region, firm);
  const answer = await fetch(address, { cache: "no-cache" });
  const forms = await caches.open(FORMS);
  if (answer.ok) await forms.put(address, answer);
  else if (answer.status === 404) await forms.delete(address);
}

/* A firm's form as it came without answers; the address of this check is put into its links. */
async function blankForm(url) {
  const told = url.searchParams;
  const address = blankAddress(told.get("region") ?? "", told.get("firm") ?? "");
  const kept = await caches.match(address, { cacheName: FORMS });
  if (!kept) return null;
  const asHtml = (text) => text.replaceAll("&", "&amp;").replaceAll('"', "&quot;");
  const empty = asHtml(address.slice(BLANK.length));
  let html = await kept.text();
  for (const path of ["/check/", "/danger/", HAND_OVER]) {
    html = html.replaceAll(`"${path}${empty}"`, `"${path}${asHtml(url.search)}"`);
  }
  return new Response(html, { headers: { ...SET.headers, "Content-Type": `${HTML}; charset=utf-8` } });
}

async function tellPages(message) {
  for (const page of await self.clients.matchAll({ type: "window", includeUncontrolled: true }))
    page.postMessage(message);
}

async function sendKept() {
  try {
    await sendWaiting();
  } finally {
    await tellPages({ type: "outbox" });
  }
}

/* The sets of other versions go; those who were in the middle of a check are told that it was carried over. */
async function takeOver() {
  const names = (await caches.keys()).filter((name) => name.startsWith(SETS) && name !== CACHE);
  await self.clients.claim();
  if (names.length) await tellPages({ type: "carried-over" });
  await Promise.all(names.map((name) => caches.delete(name)));
}

const DUTIES = {
  wake: ({ address }) => pageOf(new URL(address), true),
  "take-over": () => self.skipWaiting(),
  "keep-form": keepForm,
  send: sendKept,
};

self.addEventListener("install", (event) => event.waitUntil(takeSet()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("sync", (event) => event.waitUntil(sendKept()));
self.addEventListener("message", (event) => {
  const duty = DUTIES[event.data?.type];
  if (duty) event.waitUntil(Promise.resolve(duty(event.data)).catch(() => {}));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin || request.destination === "iframe") return;
  if (HASHES.has(url.pathname)) {
    event.respondWith(fileOf(url.pathname).catch(() => fetch(request)));
  } else if (request.mode === "navigate" || isFragment(request.headers)) {
    event.respondWith(url.pathname === SUMMARY ? siteOf(request, url) : stepOf(request, url));
  }
});

self.addEventListener("notificationclick", (event) => {
  event.notification.close();
  event.waitUntil(self.clients.openWindow(event.notification.data));
});

/* Puts the parts of the call page together. Without it the page still walks a whole check, one link at a time. */

import { beside, idOfKey } from "./calls.js";
import { Connection } from "./connection.js";
import { Door } from "./door.js";
import { Heard } from "./heard.js";
import { listen } from "./keys.js";
import { KeptList } from "./kept_list.js";
import { limited } from "./limited.js";
import { newReference, spelled } from "./reference.js";
import { pageTexts } from "./texts.js";

/** @param {string} id @returns {any} */
const byId = (id) => document.getElementById(id);
const texts = pageTexts();
/** @param {string} sentence */
const said = (sentence) => {
  byId("call-status").textContent = sentence;
};

let rowAfter = "";
const door = new Door(byId("call-door"), () => connection.address);
const connection = new Connection({
  place: location.pathname,
  shown,
  said,
  texts,
  door: (out) => door.show(out, connection.kept),
});
const heard = new Heard({ box: byId("heard"), list: byId("heard-list"), connection, texts, said });
const keptList = new KeptList({ dialog: byId("calls"), connection, texts });
const notes = byId("notes");

/** A new part of the page, or null while the server cannot be reached: then what waits is listed.
 * @param {string | null} part */
function shown(part) {
  if (part === null) return listWaiting();
  const page = new DOMParser().parseFromString(part, "text/html");
  if (page.getElementById("call-now").dataset.firm !== document.body.dataset.firm) return location.reload();
  byId("call").innerHTML = part;
  drawOwn();
  byId("call").querySelector(".story li:last-child")?.scrollIntoView({ block: "nearest" });
  const row = rowAfter && byId("call").querySelector(`[data-row="${rowAfter}"] a`);
  rowAfter = "";
  if (row) row.focus();
  else toSayUnlessWriting();
}

/* What was noted in another tab, unless somebody is writing in this one. */
function heardNotes() {
  if (document.activeElement !== notes || !document.hasFocus()) notes.value = connection.beside("notes");
}

function listWaiting() {
  const list = byId("waiting");
  const known = new URLSearchParams(connection.good());
  const waiting = Object.entries(connection.call.answers).filter(([name, [value]]) => known.get(name) !== value);
  list.replaceChildren(
    ...waiting.map(([name, [value]]) => {
      const line = document.createElement("li");
      const row = heard.index?.answers.find((answer) => answer.pairs[name] === value);
      line.textContent = row ? `${row.question}: ${row.answer}` : `${name}: ${value ?? "–"}`;
      return line;
    }),
  );
  list.hidden = waiting.length === 0;
}

function toSay() {
  if (byId("call-now").dataset.kind === "open") heard.come();
  else byId("say-title").focus({ preventScroll: true });
}

function toSayUnlessWriting() {
  if (!document.activeElement?.closest(".heard, .notes")) toSay();
}

function drawOwn() {
  byId("call-reference").textContent = spelled(connection.call.id);
  const held = keptList.others().filter((call) => beside(call, "state") === "held").length;
  byId("held-count").textContent = held ? String(held) : "";
}

function clock() {
  const until = connection.beside("state") === "ended" ? connection.call.changed : Date.now();
  const seconds = Math.max(0, Math.round((until - connection.call.started) / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/** @param {string} text */
async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    said(texts.copied);
  } catch {
    said(texts["not-copied"]);
  }
}

function summary() {
  const text = texts.summary
    .replace("%(reference)s", spelled(connection.call.id))
    .replace("%(length)s", clock())
    .replace("%(told)s", byId("call-summary").textContent);
  return notes.value.trim() ? `${text} ${texts.notes.replace("%(notes)s", notes.value.trim())}` : text;
}

/** Another page is nowhere while the line is down. The next caller may live elsewhere, so the place is the firm's again. Who was not handed over is forgotten with the
   end of the call. @param {"held" | "ended"} state */
function nextCall(state) {
  if (connection.cutOff) return said(texts.stay);
  keepTyped();
  connection.keep(state === "ended" ? { state, contact: "" } : { state });
  location.assign(`${connection.place}?call-id=${newReference()}`);
}

function keepTyped() {
  heard.leave();
  if (notes.value !== connection.beside("notes")) connection.keep({ notes: notes.value });
}

/** @type {Object<string, (button: any) => unknown>} */
const actions = {
  send: () => byId("send").showModal(),
  copy: () => copy(summary()),
  "copy-link": () => copy(texts.link.replace("%(link)s", byId("call-now").dataset.phone)),
  calls: () => keptList.open(),
  "hand-over": (link) => {
    if (connection.cutOff) return said(texts.stay);
    keepTyped();
    location.assign(link.href);
  },
  hold: () => nextCall("held"),
  end: () => nextCall("ended"),
  close: (button) => button.closest("dialog").close(),
  keys: (button) => {
    const on = button.getAttribute("aria-pressed") !== "true";
    button.setAttribute("aria-pressed", String(on));
    button.textContent = texts[on ? "keys-on" : "keys-off"];
  },
};

document.addEventListener("click", (event) => {
  const target = /** @type {Element} */ (event.target);
  const button = target.closest("[data-do]");
  if (button) {
    event.preventDefault();
    return actions[button.dataset.do](button);
  }
  /** @type {HTMLAnchorElement | null} */
  const link = target.closest("a[data-go]");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return undefined;
  event.preventDefault();
  /** @type {HTMLDialogElement | null} */ (link.closest("dialog"))?.close();
  const row = link.closest("[data-row]");
  const next = /** @type {HTMLElement | null} */ (row?.nextElementSibling?.nextElementSibling ?? null);
  rowAfter = next?.dataset.row ?? "";
  if (row && !rowAfter) /** @type {HTMLElement} */ (document.activeElement).blur();
  return connection.go(link.href);
});

notes.value = connection.beside("notes");
notes.addEventListener("input", () => {
  if (!limited(notes)) said(texts["too-long"].replace("%(most)s", notes.dataset.longest));
  connection.keep({ notes: notes.value });
});
window.addEventListener("pagehide", keepTyped);
window.addEventListener("popstate", () => connection.go(location.href, { push: false }));
window.addEventListener("storage", (event) => {
  if (idOfKey(event.key) === connection.call.id) connection.hear(heardNotes);
});
window.addEventListener("online", () => connection.cutOff && connection.show({ push: false }));
for (const hidden of document.querySelectorAll(".heard, .notes, .reference, .clock, [data-do=keys]"))
  hidden.hidden = false;
setInterval(() => {
  byId("call-clock").textContent = clock();
}, 1000);
listen({
  heard,
  notes,
  toSay,
  isFree: () => !connection.busy,
  isOn: () => document.querySelector("[data-do=keys]").getAttribute("aria-pressed") === "true",
});
heard.fetchPhrases(byId("call-now").dataset.words);
await connection.open();
drawOwn();
toSayUnlessWriting();
if (connection.beside("sheet")) said(texts.sheet.replace("%(reference)s", connection.beside("sheet")));

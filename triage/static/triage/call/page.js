/* Puts the parts of the call page together. Without it the page still walks a whole check, one link at a time. */

import { extra, idOfKey } from "./call_store.js";
import { Connection } from "./connection.js";
import { enforceMaxLength } from "./max_length.js";
import { announce, copy, message } from "./messages.js";
import { newReference, spelled } from "./reference.js";
import { SavedCalls } from "./saved_calls.js";
import { SessionGuard } from "./session_guard.js";
import { listen } from "./shortcuts.js";
import { Suggestions } from "./suggestions.js";

/** @param {string} id @returns {any} */
const byId = (id) => document.getElementById(id);
/** @param {string} name */
const hook = (name) => document.querySelector(`[data-js-${name}]`);
const state = () => hook("call-state").dataset;

let nextRow = "";
const guard = new SessionGuard(hook("session-expired"), () => connection.address);
const connection = new Connection({
  path: location.pathname,
  onPart: showPart,
  onSession: (expired) => guard.show(expired, connection.isSaved),
});
const suggestions = new Suggestions({ box: byId("caller-says"), list: byId("suggestion-list"), connection });
const savedCalls = new SavedCalls({ dialog: byId("saved-calls"), connection });
const notes = byId("notes");

/** A new part of the page, or null while the server cannot be reached: then what is unsent is listed.
 * @param {string | null} part */
function showPart(part) {
  if (part === null) return listUnsent();
  const page = new DOMParser().parseFromString(part, "text/html");
  if (page.querySelector("[data-js-call-state]").dataset.firm !== document.body.dataset.firm) return location.reload();
  byId("call").innerHTML = part;
  drawHeader();
  byId("call").querySelector(".story li:last-child")?.scrollIntoView({ block: "nearest" });
  const row = nextRow && byId("call").querySelector(`[data-row="${nextRow}"] a`);
  nextRow = "";
  if (row) row.focus();
  else focusPromptUnlessWriting();
}

/* What was noted in another tab, unless somebody is writing in this one. */
function takeNotesOfOtherTab() {
  if (document.activeElement !== notes || !document.hasFocus()) notes.value = connection.extra("notes");
}

function listUnsent() {
  const list = byId("unsent");
  const sent = new URLSearchParams(connection.shownQuery());
  const unsent = Object.entries(connection.call.answers).filter(([name, [value]]) => sent.get(name) !== value);
  list.replaceChildren(
    ...unsent.map(([name, [value]]) => {
      const line = document.createElement("li");
      const row = suggestions.index?.answers.find((answer) => answer.pairs[name] === value);
      line.textContent = row ? `${row.question}: ${row.answer}` : `${name}: ${value ?? "–"}`;
      return line;
    }),
  );
  list.hidden = unsent.length === 0;
}

function focusPrompt() {
  if (state().kind === "open") suggestions.focusBox();
  else byId("prompt-title").focus({ preventScroll: true });
}

function focusPromptUnlessWriting() {
  if (!document.activeElement?.closest(".suggestions, .notes")) focusPrompt();
}

function drawHeader() {
  byId("call-reference").textContent = spelled(connection.call.id);
  const held = savedCalls.others().filter((call) => extra(call, "state") === "held").length;
  hook("held-count").textContent = String(held || "");
}

function duration() {
  const until = connection.extra("state") === "ended" ? connection.call.changed : Date.now();
  const seconds = Math.max(0, Math.round((until - connection.call.started) / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

function summary() {
  const reference = spelled(connection.call.id);
  const call = message("summary", { reference, length: duration(), summary: hook("summary").textContent });
  return notes.value.trim() ? `${call} ${message("notes", { notes: notes.value.trim() })}` : call;
}

/** No other page can be opened while offline. The next caller may live elsewhere, so the region is the firm's again. Whose
   oven it is is deleted with the end of the call where no visit was booked.
 * @param {"held" | "ended"} endState */
function nextCall(endState) {
  if (connection.isOffline) return announce(message("offline-page"));
  saveTyped();
  connection.save(endState === "ended" ? { state: endState, contact: "" } : { state: endState });
  location.assign(`${connection.path}?call-id=${newReference()}`);
}

function saveTyped() {
  suggestions.close();
  if (notes.value !== connection.extra("notes")) connection.save({ notes: notes.value });
}

/** @type {Object<string, (control: any) => void>} */
const actions = {
  send: () => byId("send-dialog").showModal(),
  copy: () => copy(summary()),
  "copy-link": () => copy(message("link", { link: state().phoneUrl })),
  calls: () => savedCalls.open(),
  book: (link) => {
    if (connection.isOffline) return announce(message("offline-page"));
    saveTyped();
    location.assign(link.href);
  },
  hold: () => nextCall("held"),
  end: () => nextCall("ended"),
  close: (button) => button.closest("dialog").close(),
  shortcuts: (button) => {
    const on = button.getAttribute("aria-pressed") !== "true";
    button.setAttribute("aria-pressed", String(on));
    button.textContent = message(on ? "shortcuts-on" : "shortcuts-off");
  },
};

document.addEventListener("click", (event) => {
  const target = /** @type {Element} */ (event.target);
  const button = target.closest("[data-js-action]");
  if (button) {
    event.preventDefault();
    return actions[button.dataset.jsAction](button);
  }
  /** @type {HTMLAnchorElement} */
  const link = target.closest("a[data-js-navigate]");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return undefined;
  event.preventDefault();
  /** @type {HTMLDialogElement} */ (link.closest("dialog"))?.close();
  const row = link.closest("[data-row]");
  nextRow = /** @type {HTMLElement | undefined} */ (row?.nextElementSibling?.nextElementSibling)?.dataset.row ?? "";
  if (row && !nextRow) /** @type {HTMLElement} */ (document.activeElement).blur();
  return connection.go(link.href);
});

notes.value = connection.extra("notes");
notes.addEventListener("input", () => {
  if (!enforceMaxLength(notes)) announce(message("too-long", { max: notes.dataset.maxLength }));
  connection.save({ notes: notes.value });
});
window.addEventListener("pagehide", saveTyped);
window.addEventListener("popstate", () => connection.go(location.href, { push: false }));
window.addEventListener("storage", (event) => {
  if (idOfKey(event.key) === connection.call.id) connection.mergeOtherTab(takeNotesOfOtherTab);
});
window.addEventListener("online", () => connection.isOffline && connection.show({ push: false }));
for (const part of document.querySelectorAll("[data-js-needed]")) part.hidden = false;
setInterval(() => {
  byId("call-clock").textContent = duration();
}, 1000);
listen({
  suggestions,
  notes,
  focusPrompt,
  isFree: () => !connection.busy,
  isOn: () => document.querySelector("[data-js-action=shortcuts]").getAttribute("aria-pressed") === "true",
});
suggestions.fetchIndex(state().phrasesUrl);
await connection.open();
drawHeader();
focusPromptUnlessWriting();
if (connection.extra("sheet")) announce(message("sheet", { reference: connection.extra("sheet") }));

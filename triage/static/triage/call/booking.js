/* A visit being booked. What is typed is saved in this browser until it was sent, and sent without leaving the page, so
   that neither a lost connection nor an expired session takes any of it away. Without this the form is sent as any. */

import { extra, idOfKey, load, newCall, parse, save, withChange, withExtras } from "./call_store.js";
import { SignedOut, fetchPart } from "./connection.js";
import { enforceMaxLength } from "./max_length.js";
import { announce, message } from "./messages.js";
import { SessionGuard } from "./session_guard.js";
import { listenOutsideBoxes } from "./shortcuts.js";

/** @param {string} id @returns {any} */
const byId = (id) => document.getElementById(id);
const NOT_TYPED = ["csrfmiddlewaretoken", "state"];
const CALL_PATH = location.pathname.replace(/hand-over\/$/, "");
const FORBIDDEN = 403;

const here = () => location.pathname + location.search;
const guard = new SessionGuard(document.querySelector("[data-js-session-expired]"), here);
/** @type {HTMLFormElement} */
let form = byId("booking-form");
let sending = false;
let isSaved = true;
const id = form.dataset.callId;
let call = load(id) ?? withChange(newCall(id, parse(location.search).region), parse(""), parse(location.search));

/** @param {Object<string, any>} change */
function saveExtras(change) {
  call = withExtras(call, change);
  const whole = id ? save(call) : null;
  if (whole) call = whole;
  else if (isSaved) announce(message("not-saved"));
  isSaved = whole !== null;
}

function typed() {
  return Object.fromEntries([...new FormData(form)].filter(([name]) => !NOT_TYPED.includes(name)));
}

/* What was typed before, and the one key of this booking; a form that came back has its own of both. */
function fillIn() {
  const contact = extra(call, "contact") || { notes: extra(call, "notes") };
  for (const [name, value] of Object.entries(contact)) {
    const field = /** @type {any} */ (form.elements.namedItem(name));
    if (field?.type === "checkbox") field.checked = field.value === value;
    else if (field) field.value = value;
  }
  form.elements.state.value = extra(call, "form") || form.elements.state.value;
}

function start() {
  form = byId("booking-form");
  const alert = document.querySelector("main [role=alert]");
  if (!alert) fillIn();
  saveExtras({ form: form.elements.state.value });
  form.addEventListener("input", (event) => {
    const box = /** @type {HTMLInputElement} */ (event.target);
    if (box.dataset.maxLength && !enforceMaxLength(box)) announce(message("too-long", { max: box.dataset.maxLength }));
    saveExtras({ contact: typed(), notes: form.elements.notes.value });
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    send();
  });
  (alert?.querySelector("a") ?? form.elements.name).focus();
}

async function send() {
  if (sending) return;
  sending = true;
  try {
    let response = await post();
    // Whoever signed in anew meanwhile, in another tab, has another token.
    if (response.status === FORBIDDEN) response = await renewToken().then(post);
    await showAnswer(response);
  } catch (problem) {
    guard.show(problem instanceof SignedOut, isSaved);
    if (!(problem instanceof SignedOut)) announce(message("offline"));
  }
  sending = false;
}

function post() {
  return fetch(form.action, { method: "POST", body: new FormData(form) });
}

async function renewToken() {
  const page = new DOMParser().parseFromString(await fetchPart(here()), "text/html");
  /** @type {HTMLInputElement} */
  const token = page.querySelector("#booking-form [name=csrfmiddlewaretoken]");
  form.elements.csrfmiddlewaretoken.value = token.value;
}

/** @param {Response} response */
async function showAnswer(response) {
  if (response.status >= 500) throw new Error(`the page answered ${response.status}`);
  if (!new URL(response.url).pathname.startsWith(CALL_PATH)) throw new SignedOut();
  guard.show(false, isSaved);
  if (response.redirected) {
    location.assign(response.url);
    return;
  }
  const page = new DOMParser().parseFromString(await response.text(), "text/html");
  byId("prompt").replaceWith(page.getElementById("prompt"));
  announce("");
  start();
}

window.addEventListener("storage", (event) => {
  if (idOfKey(event.key) !== id) return;
  call = load(id) ?? call;
  if (extra(call, "sheet")) announce(message("sheet", { reference: extra(call, "sheet") }));
});
listenOutsideBoxes({ send: () => form.requestSubmit(), refuse: () => announce(message("offline-page")) });
start();
if (extra(call, "sheet")) announce(message("sheet", { reference: extra(call, "sheet") }));

/* A visit taken down. What is typed is kept in this browser until it was handed over, and sent without leaving the page,
   so that neither a lost line nor a session that is over takes any of it away. Without this the form is sent as any. */

import { beside, idOfKey, load, newCall, parse, save, withBeside, withChange } from "./calls.js";
import { SignedOut, fetchPart } from "./connection.js";
import { Door } from "./door.js";
import { listenOutsideBoxes } from "./keys.js";
import { pageTexts } from "./texts.js";
import { limited } from "./limited.js";

/** @param {string} id @returns {any} */
const byId = (id) => document.getElementById(id);
const texts = pageTexts();
const OURS = ["csrfmiddlewaretoken", "state"];
const CALLS = location.pathname.replace(/hand-over\/$/, "");
const EXPIRED = 403;

const here = () => location.pathname + location.search;
/** @param {string} sentence */
const said = (sentence) => {
  byId("call-status").textContent = sentence;
};
const door = new Door(byId("call-door"), here);
/** @type {HTMLFormElement} */
let form = byId("take");
let sending = false;
let kept = true;
const id = form.dataset.call;
let call = load(id) ?? withChange(newCall(id, parse(location.search).region), parse(""), parse(location.search));

/** @param {Object<string, any>} change */
function keep(change) {
  call = withBeside(call, change);
  const whole = id ? save(call) : null;
  if (whole) call = whole;
  else if (kept) said(texts["kept-not"]);
  kept = whole !== null;
}

function typed() {
  return Object.fromEntries([...new FormData(form)].filter(([name]) => !OURS.includes(name)));
}

/* What was typed before, and the one key of this hand-over; a form that came back has its own of both. */
function fillIn() {
  const contact = beside(call, "contact") || { notes: beside(call, "notes") };
  for (const [name, value] of Object.entries(contact)) {
    const field = /** @type {HTMLInputElement | null} */ (form.elements.namedItem(name));
    if (field?.type === "checkbox") field.checked = field.value === value;
    else if (field) field.value = value;
  }
  form.elements.state.value = beside(call, "form") || form.elements.state.value;
}

function begin() {
  form = byId("take");
  const wrong = document.querySelector("main [role=alert]");
  if (!wrong) fillIn();
  keep({ form: form.elements.state.value });
  form.addEventListener("input", (event) => {
    const box = /** @type {HTMLInputElement} */ (event.target);
    if (box.dataset.longest && !limited(box)) said(texts["too-long"].replace("%(most)s", box.dataset.longest));
    keep({ contact: typed(), notes: form.elements.notes.value });
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    send();
  });
  (wrong?.querySelector("a") ?? form.elements.name).focus();
}

async function send() {
  if (sending) return;
  sending = true;
  try {
    let response = await post();
    // Whoever signed in anew meanwhile, in another tab, has another token.
    if (response.status === EXPIRED) response = await takeToken().then(post);
    await answered(response);
  } catch (problem) {
    door.show(problem instanceof SignedOut, kept);
    if (!(problem instanceof SignedOut)) said(texts["cut-off"]);
  }
  sending = false;
}

function post() {
  return fetch(form.action, { method: "POST", body: new FormData(form) });
}

async function takeToken() {
  const page = new DOMParser().parseFromString(await fetchPart(here()), "text/html");
  /** @type {HTMLInputElement} */
  const token = page.querySelector("#take [name=csrfmiddlewaretoken]");
  form.elements.csrfmiddlewaretoken.value = token.value;
}

/** @param {Response} response */
async function answered(response) {
  if (response.status >= 500) throw new Error(`the page answered ${response.status}`);
  if (!new URL(response.url).pathname.startsWith(CALLS)) throw new SignedOut();
  door.show(false, kept);
  if (response.redirected) {
    location.assign(response.url);
    return;
  }
  const page = new DOMParser().parseFromString(await response.text(), "text/html");
  byId("say").replaceWith(page.getElementById("say"));
  said("");
  begin();
}

window.addEventListener("storage", (event) => {
  if (idOfKey(event.key) !== id) return;
  call = load(id) ?? call;
  if (beside(call, "sheet")) said(texts.sheet.replace("%(reference)s", beside(call, "sheet")));
});
listenOutsideBoxes({ send: () => form.requestSubmit(), stay: () => said(texts.stay) });
begin();
if (beside(call, "sheet")) said(texts.sheet.replace("%(reference)s", beside(call, "sheet")));

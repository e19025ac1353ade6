/* Keeps the time of a reading: from a moment the person presses, through a locked phone and a page opened again. The
   moment stands in the address, which can be kept and sent, and in the browser's storage where there is one. */

import { fillIn } from "./fill_in.js";
import { notify } from "./notification.js";
import { fillRow } from "./thermometer.js";
import { keptStart, keepStart } from "./started.js";

/* Minutes at which it is worth going to look; after the last one, every half hour. */
/** @type {Object<string, number[]>} */
const LOOKS = { "run-on": [1, 5, 10, 15, 20, 30, 45, 60, 90], preheat: [45], thermometer: [30] };
const AGAIN = 30;
const TICK = 1000;

/** @param {string} kind @param {number} minutes */
function nextLook(kind, minutes) {
  const looks = LOOKS[kind];
  return looks.find((look) => look > minutes) ?? Math.ceil((minutes + 0.001) / AGAIN) * AGAIN;
}

/** To a tenth of a minute, as the form takes it. @param {number} start */
function minutesSince(start) {
  return Math.max(0, Date.now() - start) / 60_000;
}

/** @param {HTMLElement} block */
export function open(block) {
  if (!block.hidden) return;
  block.hidden = false;
  const kind = block.dataset.clock;
  const form = /** @type {HTMLFormElement} */ (block.closest("form"));
  /** @param {string} name */
  const part = (name) => block.querySelector(`[data-${name}]`);
  let start = keptStart(kind);
  let due = start ? nextLook(kind, 0) : 0;
  let notified = start && minutesSince(start) >= due ? due : 0; // who opens the page at a look that is due sees it there

  /** @param {number} minutes */
  function say(minutes) {
    const m = Math.floor(minutes);
    part("elapsed").textContent = fillIn(block.dataset.time, { m, s: Math.floor((minutes - m) * 60) });
    const isDue = minutes >= due;
    const text = isDue ? block.dataset.now : fillIn(block.dataset.next, { m: due });
    if (part("ask").textContent !== text) part("ask").textContent = text;
    part("ask").classList.toggle("due", isDue);
    if (isDue && notified !== due) notifyDue(text);
  }

  /** @param {string} text */
  function notifyDue(text) {
    notified = due;
    notify(text, { tag: `oven-check-${kind}`, page: location.pathname + location.search });
  }

  function show() {
    part("not-started").hidden = Boolean(start);
    part("running").hidden = !start;
    /** @type {HTMLInputElement} */ (part("started")).value = start ? String(Math.round(start / 1000)) : "";
    if (start) say(minutesSince(start));
  }

  /** @param {number} moment */
  function begin(moment) {
    start = moment;
    due = nextLook(kind, 0);
    notified = 0;
    keepStart(kind, start);
    show();
  }

  /** @param {HTMLElement} button */
  function set(button) {
    const minutes = Number(button.dataset.at ?? minutesSince(start));
    for (const name of button.dataset.set.split(" ")) form.elements[`read-${name}`].value = minutes.toFixed(1);
    for (const box of block.querySelectorAll("[data-tick]")) {
      form.elements[`read-${box.dataset.tick}`].checked = box === button;
    }
    due = nextLook(kind, minutes);
    show();
    form.dispatchEvent(new Event("change", { bubbles: true }));
  }

  block.addEventListener("click", (event) => {
    const button = /** @type {Element} */ (event.target).closest("button");
    if (!button) return;
    if (button.matches("[data-start]")) begin(Date.now());
    if (button.matches("[data-restart]")) begin(0);
    if (button.matches("[data-set]")) set(button);
    if (button.matches("[data-row]")) fillRow(form, minutesSince(start));
  });

  const ticking = setInterval(() => (block.isConnected ? show() : clearInterval(ticking)), TICK);
  document.addEventListener("visibilitychange", show);
  show();
}

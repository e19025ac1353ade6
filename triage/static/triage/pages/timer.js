/* A timer for what takes its time: cooling down, heating up, a fan that runs on. It keeps the moment it was started, not a
   count, so a locked phone, a closed page and a new start of the browser change nothing. */

import { fillIn } from "./fill_in.js";
import { notify } from "./notification.js";

const panel = document.getElementById("timer");
const line = document.getElementById("timer-status");
const KEY = "oven-check-timer";
const MINUTE = 60_000;

/** @typedef {{started: number, minutes: number, notified: boolean, page: string}} Timer `started` in milliseconds */

/** @type {Timer | null} */
let memory = null; // where the browser keeps nothing, the page itself does
/** @type {number | undefined} */
let ticking;

function kept() {
  try {
    return JSON.parse(localStorage.getItem(KEY));
  } catch {
    return memory;
  }
}

/** @param {Timer | null} timer */
function keep(timer) {
  memory = timer;
  try {
    if (timer) localStorage.setItem(KEY, JSON.stringify(timer));
    else localStorage.removeItem(KEY);
  } catch {
    // kept in `memory`
  }
}

/** @param {string} selector */
const find = (selector) => panel.querySelector(selector);
/** @returns {HTMLInputElement} */
const minutesField = () => panel.querySelector("input");

/** @param {number} milliseconds */
function elapsed(milliseconds) {
  const seconds = Math.floor(milliseconds / 1000);
  return fillIn(panel.dataset.part, { minutes: Math.floor(seconds / 60), seconds: seconds % 60 });
}

/** @param {Timer | null} timer */
function show(timer) {
  panel.hidden = !timer && !location.pathname.startsWith(panel.dataset.tasks);
  find("[data-start]").hidden = Boolean(timer);
  find("[data-stop]").hidden = !timer;
  minutesField().disabled = Boolean(timer);
  find("[data-notify]").hidden = !("Notification" in window) || Notification.permission !== "default";
}

/** @param {Timer} timer */
async function notifyOver(timer) {
  keep({ ...timer, notified: true });
  line.textContent = fillIn(panel.dataset.over, { minutes: timer.minutes });
  await notify(line.textContent, { tag: KEY, page: timer.page });
}

function tick() {
  const timer = kept();
  if (!timer) return;
  const gone = Date.now() - timer.started;
  if (gone < 0) {
    line.textContent = panel.dataset.changed;
    keep({ ...timer, started: Date.now() });
    return;
  }
  find("[data-time]").textContent = elapsed(gone);
  if (timer.minutes && !timer.notified && gone >= timer.minutes * MINUTE) notifyOver(timer);
}

function run() {
  clearInterval(ticking);
  const timer = kept();
  show(timer);
  if (!timer) return;
  minutesField().value = String(timer.minutes);
  ticking = setInterval(tick, 1000);
  tick();
}

function start() {
  const minutes = Math.min(600, Math.max(0, Math.round(Number(minutesField().value)) || 0));
  keep({ started: Date.now(), minutes, notified: false, page: location.pathname + location.search });
  line.textContent = "";
  run();
}

function stop() {
  tick();
  keep(null);
  line.textContent = find("[data-time]").textContent;
  run();
}

export function openTimer() {
  if (!panel) return;
  find("[data-start]").addEventListener("click", start);
  find("[data-stop]").addEventListener("click", stop);
  find("[data-notify]").addEventListener("click", () => Notification.requestPermission().then(() => show(kept())));
  document.addEventListener("visibilitychange", tick);
  document.body.addEventListener("htmx:afterSettle", () => show(kept()));
  document.body.addEventListener("htmx:historyRestore", () => show(kept()));
  run();
}

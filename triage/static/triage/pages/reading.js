/* A reading's form: shows what counts flashes or keeps the time beside it, wherever such a form comes into the page.
   Without this script the forms are the same, and the figures are typed from a clock. */

import { open as openCounter } from "./meter.js";
import { open as openClock } from "./reading_clock.js";

/** @type {[string, (block: HTMLElement) => void][]} */
const TOOLS = [
  ["[data-counter][hidden]", openCounter],
  ["[data-clock][hidden]", openClock],
];

function open() {
  for (const [selector, openTool] of TOOLS) {
    for (const block of document.querySelectorAll(selector)) openTool(block);
  }
}

/* A swap puts no focus on a fragment of an address; a form that was sent does. */
function showResult() {
  if (window.location.hash !== "#reading-result") return;
  const result = document.getElementById("reading-result");
  if (result?.children.length) result.scrollIntoView({ block: "start" });
}

export function openReadings() {
  open();
  showResult();
  document.body.addEventListener("htmx:afterSettle", open);
  document.body.addEventListener("htmx:historyRestore", open);
}

/* "Save my answers": this check's address as a code, drawn here so that it needs no line, and the page on paper. */

import { drawCode } from "./qr_code.js";

const panel = document.getElementById("keep-answers");
const CHECK = /^\/(check|danger)\//;

function address() {
  return `${location.origin}/check/${location.search}`;
}

/* Only once somebody is to see it: it takes a slow phone a fifth of a second. */
function draw() {
  const holder = document.getElementById("answers-code");
  const code = drawCode(address());
  holder.hidden = !code;
  if (code) holder.replaceChildren(code);
}

function arrive() {
  const link = document.getElementById("answers-address");
  link.href = link.textContent = address();
  panel.hidden = !CHECK.test(location.pathname);
  panel.querySelector("[data-print]").hidden = !document.getElementById("told");
  if (!panel.hidden && panel.open) draw();
}

/* Browsers fetch a download past the worker, so without a line the words on the page are the file. */
function saveWords(event) {
  const link = event.target.closest?.('a[download][href^="/check/summary/"]');
  const told = document.getElementById("told");
  if (!link || !told || navigator.onLine) return;
  event.preventDefault();
  const file = URL.createObjectURL(new Blob([told.textContent], { type: "text/plain" }));
  Object.assign(document.createElement("a"), { href: file, download: "oven-check.txt" }).click();
  setTimeout(() => URL.revokeObjectURL(file), 60_000);
}

export function offerSaving() {
  if (!panel) return;
  let opened = false;
  panel.addEventListener("toggle", () => panel.open && draw());
  panel.querySelector("[data-print]").addEventListener("click", () => window.print());
  window.addEventListener("beforeprint", () => {
    opened = panel.open;
    panel.open = true; // on paper the code stands open
    if (!panel.hidden) draw();
  });
  window.addEventListener("afterprint", () => (panel.open = opened));
  document.addEventListener("click", saveWords);
  document.body.addEventListener("htmx:afterSettle", arrive);
  document.body.addEventListener("htmx:historyRestore", arrive);
  arrive();
}

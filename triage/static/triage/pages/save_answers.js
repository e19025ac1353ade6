/* "Save my answers": this check's address as a code, drawn here so that it needs no connection, and the page on paper. */

import { drawCode } from "./qr_code.js";

const panel = /** @type {HTMLDetailsElement | null} */ (document.getElementById("save-answers"));

function address() {
  return new URL(panel.dataset.check + location.search, location.href).href;
}

/* Only once somebody is to see it: it takes a slow phone a fifth of a second. */
function draw() {
  const holder = document.getElementById("answers-code");
  const code = drawCode(address());
  holder.hidden = !code;
  if (code) holder.replaceChildren(code);
}

function arrive() {
  const { check, danger } = panel.dataset;
  const link = /** @type {HTMLAnchorElement} */ (document.getElementById("answers-address"));
  link.href = link.textContent = address();
  panel.hidden = ![check, danger].some((path) => location.pathname.startsWith(path));
  panel.querySelector("[data-print]").hidden = !document.querySelector("[data-summary]");
  if (!panel.hidden && panel.open) draw();
}

/** Browsers fetch a download past the worker, so with no connection the text on the page is the file.
 * @param {MouseEvent} event */
function saveSummary(event) {
  const link = /** @type {Element} */ (event.target).closest?.("a[data-summary-file]");
  const summary = document.querySelector("[data-summary]");
  if (!link || !summary || navigator.onLine) return;
  event.preventDefault();
  const file = URL.createObjectURL(new Blob([summary.textContent], { type: "text/plain" }));
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
  document.addEventListener("click", saveSummary);
  document.body.addEventListener("htmx:afterSettle", arrive);
  document.body.addEventListener("htmx:historyRestore", arrive);
  arrive();
}

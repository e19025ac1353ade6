/* The first page's search box: keeps the lines whose words, or words that mean the same, begin with what was typed.
   Without this script every line is listed and the box stays hidden. */

/** @param {string} text */
function plainWords(text) {
  return text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);
}

/** Words of one or two letters, and those that every line could have ("oven"), ask nothing unless they stand alone.
 * @param {HTMLElement} finder */
function askedWords(finder) {
  /** @type {HTMLInputElement} */
  const box = finder.querySelector("input");
  const said = plainWords(box.value);
  const common = plainWords(finder.dataset.common);
  const asked = said.filter((word) => word.length > 2 && !common.includes(word));
  return asked.length ? asked : said;
}

/** How many of the asked words begin one of these. @param {string[]} asked @param {string} among */
function hits(asked, among) {
  if (!asked.length) return 0; // as when the page opens, and then forty lines would be taken apart for nothing
  const known = plainWords(among);
  return asked.filter((word) => known.some((other) => other.startsWith(word))).length;
}

/** @param {HTMLElement} finder @param {HTMLElement} list */
function showBest(finder, list) {
  const asked = askedWords(finder);
  const danger = list.querySelector("[data-danger]");
  const lines = /** @type {HTMLElement[]} */ ([...list.children]).filter((line) => line !== danger);
  const scores = lines.map((line) => hits(asked, `${line.textContent} ${line.dataset.searchTerms}`));
  const best = Math.max(0, ...scores);
  let shown = 0;
  lines.forEach((line, at) => {
    line.hidden = best > 0 && scores[at] < best;
    if (!line.hidden) shown += 1;
  });
  danger.hidden = !asked.some((word) => word.length > 2 && hits([word], danger.dataset.searchTerms));
  const report = best ? finder.dataset.some.replace("%(n)s", String(shown)) : finder.dataset.none;
  const first = danger.hidden ? "" : `${finder.dataset.danger} `;
  finder.querySelector("[role=status]").textContent = asked.length ? first + report : "";
}

/** @param {Event} event */
function pointAt(event) {
  const bar = /** @type {Element} */ (event.target).closest?.("[data-part]");
  const oven = document.querySelector(".oven");
  if (!bar || !oven) return;
  oven.setAttribute("class", bar.dataset.part ? `oven oven--${bar.dataset.part}` : "oven");
}

/* Runs at load and after every swap, because the first page can also arrive in place. */
function open() {
  const finder = document.querySelector("[data-finder][hidden]");
  const list = document.querySelector("[data-lines]");
  if (!finder || !list) return;
  finder.hidden = false;
  finder.querySelector("input").addEventListener("input", () => showBest(finder, list));
  list.addEventListener("pointerover", pointAt);
  list.addEventListener("focusin", pointAt);
  showBest(finder, list);
}

export function openFinder() {
  open();
  document.body.addEventListener("htmx:afterSettle", open);
  document.body.addEventListener("htmx:historyRestore", open);
}

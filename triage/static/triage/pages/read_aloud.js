/* Reads the page in the browser's own voice, and only after a tap. The button is there only where the browser has a voice
   in the language of the page; offline, only one that lives on the phone counts. */

/** @type {HTMLButtonElement | null} */
const button = document.querySelector("[data-read]");
const speech = window.speechSynthesis;
const BLOCKS = "h1, h2, h3, p, li, dt, dd, figcaption";
const NOT_READ = "[hidden], details:not([open]), nav, pre, form, .answers, .row";

function voice() {
  const wanted = document.documentElement.lang.split("-")[0].toLowerCase();
  const known = speech.getVoices().filter(({ lang }) => lang.toLowerCase().split(/[-_]/)[0] === wanted);
  const usable = navigator.onLine ? known : known.filter(({ localService }) => localService);
  const own = navigator.languages.map((lang) => lang.toLowerCase());
  /** @param {SpeechSynthesisVoice} voice */
  const rank = ({ lang, localService }) =>
    2 * Number(own.includes(lang.toLowerCase().replace("_", "-"))) + Number(localService);
  return usable.sort((one, other) => rank(other) - rank(one))[0];
}

/** The words of a block without those of the blocks in it, which are read by themselves. @param {Element} block */
function ownText(block) {
  /** @param {Node} node @returns {string} */
  const textOf = (node) => {
    if (node instanceof Text) return node.data;
    if (!(node instanceof Element) || node.matches(BLOCKS) || node.matches("svg, ul, ol, dl")) return " ";
    return [...node.childNodes].map(textOf).join("");
  };
  return [...block.childNodes].map(textOf).join("").replace(/\s+/g, " ").trim();
}

function sentences() {
  const blocks = [...document.querySelectorAll("#step .sheet :is(h1, h2, h3, p, li, dt, dd, figcaption)")];
  return blocks
    .filter((block) => !block.closest(NOT_READ))
    .map(ownText)
    .filter(Boolean);
}

/** @param {string} state */
function show(state) {
  button.dataset.state = state;
  button.setAttribute("aria-label", button.dataset[state]);
  button.title = button.dataset[state];
}

/** @param {string} state */
function stop(state) {
  speech.cancel();
  show(state);
}

/* One utterance for each block: some voices break off in a long one. */
function read() {
  const chosen = voice();
  speech.cancel();
  const parts = sentences().map((text) => new SpeechSynthesisUtterance(text));
  for (const part of parts) {
    part.voice = chosen;
    part.lang = chosen.lang.replace("_", "-");
    speech.speak(part);
  }
  parts.at(-1)?.addEventListener("end", () => button.dataset.state === "stop" && show("again"));
  show("stop");
}

function offer() {
  button.hidden = !voice();
}

export function offerReadingAloud() {
  if (!button || !speech) return;
  button.addEventListener("click", () => (button.dataset.state === "stop" ? stop("again") : read()));
  document.body.addEventListener("htmx:beforeSwap", () => stop("read"));
  window.addEventListener("pagehide", () => speech.cancel());
  speech.addEventListener?.("voiceschanged", offer);
  window.addEventListener("online", offer);
  window.addEventListener("offline", offer);
  show("read");
  offer();
}

/* After the hand-over: the call is over, and whose oven it is is no longer kept in this browser. */

import { load, save, withBeside } from "./calls.js";
import { listenOutsideBoxes } from "./keys.js";
import { pageTexts } from "./texts.js";

const main = document.getElementById("say");
const texts = pageTexts();
const call = load(main.dataset.call);
if (call) save(withBeside(call, { state: "ended", sheet: main.dataset.sheet, contact: "" }));

/** @param {string} sentence */
const said = (sentence) => {
  document.getElementById("call-status").textContent = sentence;
};

document.querySelector("[data-do=copy]")?.addEventListener("click", async () => {
  try {
    await navigator.clipboard.writeText(
      texts.link.replace("%(link)s", document.getElementById("own-link").textContent),
    );
    said(texts.copied);
  } catch {
    said(texts["not-copied"]);
  }
});
listenOutsideBoxes({ send: () => {}, stay: () => said(texts.stay) });
main.querySelector("h1").focus();

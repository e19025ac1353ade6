/* After the hand-over: the call is over, and whose oven it is is no longer kept in this browser. */

import { load, save, withBeside } from "./calls.js";
import { listenOutsideBoxes } from "./keys.js";

const main = document.getElementById("say");
const words = Object.fromEntries(
  [...document.getElementById("call-words").children].map((line) => [line.dataset.name, line.textContent]),
);
const call = load(main.dataset.call);
if (call) save(withBeside(call, { state: "ended", sheet: main.dataset.sheet, contact: "" }));

const said = (sentence) => {
  document.getElementById("call-status").textContent = sentence;
};

document.querySelector("[data-do=copy]")?.addEventListener("click", async () => {
  try {
    await navigator.clipboard.writeText(
      words.link.replace("%(link)s", document.getElementById("own-link").textContent),
    );
    said(words.copied);
  } catch {
    said(words["not-copied"]);
  }
});
listenOutsideBoxes({ send: () => {}, stay: () => said(words.stay) });
main.querySelector("h1").focus();

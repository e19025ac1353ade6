/* After the visit was booked: the call is over, and whose oven it is is no longer saved in this browser. */

import { load, save, withExtras } from "./call_store.js";
import { announce, copy, message } from "./messages.js";
import { listenOutsideBoxes } from "./shortcuts.js";

const main = document.getElementById("prompt");
const call = load(main.dataset.callId);
if (call) save(withExtras(call, { state: "ended", sheet: main.dataset.reference, contact: "" }));

document.querySelector("[data-js-action=copy]")?.addEventListener("click", () => {
  copy(message("link", { link: document.querySelector("[data-js-own-link]").textContent }));
});
listenOutsideBoxes({ send: () => {}, refuse: () => announce(message("offline-page")) });
main.querySelector("h1").focus();

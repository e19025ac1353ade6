/* The page that asks for an earlier reference: its keys work while nobody is writing in a box. */

import { listenOutsideBoxes } from "./keys.js";

const status = document.getElementById("call-status");

listenOutsideBoxes({
  send: () => /** @type {HTMLFormElement} */ (document.querySelector("main form")).requestSubmit(),
  stay: () => {
    status.textContent = status.dataset.stay;
  },
});

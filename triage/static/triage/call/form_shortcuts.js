/* The page that asks for a previous reference: its shortcuts work while nobody is writing in a box. */

import { announce, message } from "./messages.js";
import { listenOutsideBoxes } from "./shortcuts.js";

listenOutsideBoxes({
  send: () => /** @type {HTMLFormElement} */ (document.querySelector("main form")).requestSubmit(),
  refuse: () => announce(message("offline-page")),
});

/* One key, one thing. A key belongs to the part of the page that has the focus, else to what is to be said, else to the
   whole call. In a box, keys are letters, but for Escape and the Enter of the box for what they say. */

/** @typedef {import("./heard.js").Heard} Heard */

/** @type {Object<string, string>} */
const ZONES = { "/": "heard", w: "caller", e: "story", n: "notes" };

/** @param {ParentNode | null} zone @param {string} key */
function pressed(zone, key) {
  return [...(zone?.querySelectorAll("[data-key]") ?? [])].find(
    (one) => one.dataset.key === key && one.checkVisibility(),
  );
}

/** A key held down, or pressed while the next page is on its way, records nothing: it was meant for what stood there.
 * @param {{heard: Heard, notes: HTMLElement, toSay: () => void, isOn: () => boolean, isFree: () => boolean}} page */
export function listen({ heard, notes, toSay, isOn, isFree }) {
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
    const target = /** @type {Element} */ (event.target);
    const typing = target.closest("textarea, input");
    if (event.key === "Escape" && !document.querySelector("dialog[open]")) {
      heard.leave();
      event.preventDefault();
      toSay();
      return;
    }
    if (typing) {
      if (event.target === heard.box && (event.key === "ArrowDown" || (event.key === "Enter" && !event.shiftKey))) {
        event.preventDefault();
        heard.enter();
      }
      return;
    }
    if (!isOn() || arrow(event)) return;
    const dialog = document.querySelector("dialog[open]");
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    const row = target.closest("[data-row]");
    const zone = dialog ?? row ?? target.closest("[data-zone]");
    const one = dialog
      ? pressed(dialog, key)
      : (pressed(zone, key) ?? pressed(document.getElementById("say"), key) ?? anywhere(key));
    if (one) {
      event.preventDefault();
      if (isFree() && !event.repeat) one.click();
    } else if (!dialog && ZONES[key]) {
      event.preventDefault();
      go(ZONES[key], heard, notes);
    }
  });
}

/** @param {string} key */
function anywhere(key) {
  return [...document.querySelectorAll(".tools [data-key], .change [data-key], .line [data-key]")].find(
    (one) => one.dataset.key === key && one.checkVisibility(),
  );
}

/** @param {string} zone @param {Heard} heard @param {HTMLElement} notes */
function go(zone, heard, notes) {
  if (zone === "heard") heard.come();
  else if (zone === "notes") notes.focus();
  else document.querySelector(`[data-zone="${zone}"] a`)?.focus();
}

/** Up and down move inside a list of lines that has the focus. @param {KeyboardEvent} event */
function arrow(event) {
  const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
  const list = /** @type {Element} */ (event.target).closest("[data-zone]");
  if (!step || !list) return false;
  const lines = [...list.querySelectorAll("a, button")].filter((one) => one.checkVisibility());
  const at = lines.indexOf(/** @type {HTMLElement} */ (document.activeElement));
  if (at < 0) return false;
  event.preventDefault();
  lines[Math.min(lines.length - 1, Math.max(0, at + step))].focus();
  return true;
}

/** Pages that are a form or a few lines to say: the keys of links and buttons, while nobody is writing in a box. Without
   a line no link is followed, because there is nothing at its other end; `stay` says so.
 * @param {{send: () => void, stay: () => void}} page */
export function listenOutsideBoxes({ send, stay }) {
  document.addEventListener("click", (event) => {
    if (navigator.onLine || !(/** @type {Element} */ (event.target).closest(".tools a"))) return;
    event.preventDefault();
    stay();
  });
  document.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      send();
      return;
    }
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
    if (event.key === "Escape") /** @type {HTMLElement} */ (document.activeElement).blur();
    else if (!(/** @type {Element} */ (event.target).closest("textarea, select, input:not([type=checkbox])"))) {
      const one = pressed(document, event.key.toLowerCase());
      if (one) event.preventDefault();
      one?.click();
    }
  });
}

/* One key, one thing. A key belongs to the part of the page that has the focus, else to the prompt, else to the whole
   call. In a box, keys are letters, but for Escape and the Enter of the box for what the caller says. */

/** @typedef {import("./suggestions.js").Suggestions} Suggestions */

/** @type {Object<string, string>} */
const ZONES = { "/": "suggestions", w: "caller", e: "story", n: "notes" };
const EVERYWHERE = ".shortcuts [data-key], .useful-questions [data-key], .call-header [data-key]";

/** @param {Iterable<HTMLElement>} targets @param {string} key */
function shortcutIn(targets, key) {
  return [...targets].find((target) => target.dataset.key === key && target.checkVisibility());
}

/** @param {ParentNode | null} zone @param {string} key */
function shortcutOf(zone, key) {
  return shortcutIn(zone?.querySelectorAll("[data-key]") ?? [], key);
}

/** A key held down, or pressed while the next page is on its way, records nothing: it was meant for what stood there.
 * @param {{suggestions: Suggestions, notes: HTMLElement, focusPrompt: () => void, isOn: () => boolean,
 *   isFree: () => boolean}} page */
export function listen({ suggestions, notes, focusPrompt, isOn, isFree }) {
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
    if (event.key === "Escape" && !document.querySelector("dialog[open]")) {
      suggestions.close();
      event.preventDefault();
      focusPrompt();
      return;
    }
    if (/** @type {Element} */ (event.target).closest("textarea, input")) {
      if (event.target === suggestions.box && opensList(event)) {
        event.preventDefault();
        suggestions.focusList();
      }
      return;
    }
    if (!isOn() || moveInList(event)) return;
    const dialog = document.querySelector("dialog[open]");
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    const target = dialog ? shortcutOf(dialog, key) : targetOf(event, key);
    if (target) {
      event.preventDefault();
      if (isFree() && !event.repeat) target.click();
    } else if (!dialog && ZONES[key]) {
      event.preventDefault();
      focusZone(ZONES[key], suggestions, notes);
    }
  });
}

/** @param {KeyboardEvent} event */
function opensList(event) {
  return event.key === "ArrowDown" || (event.key === "Enter" && !event.shiftKey);
}

/** @param {KeyboardEvent} event @param {string} key */
function targetOf(event, key) {
  const focused = /** @type {Element} */ (event.target);
  const zone = focused.closest("[data-row]") ?? focused.closest("[data-zone]");
  return (
    shortcutOf(zone, key) ??
    shortcutOf(document.getElementById("prompt"), key) ??
    shortcutIn(document.querySelectorAll(EVERYWHERE), key)
  );
}

/** @param {string} zone @param {Suggestions} suggestions @param {HTMLElement} notes */
function focusZone(zone, suggestions, notes) {
  if (zone === "suggestions") suggestions.focusBox();
  else if (zone === "notes") notes.focus();
  else document.querySelector(`[data-zone="${zone}"] a`)?.focus();
}

/** Up and down move inside a list that has the focus. @param {KeyboardEvent} event */
function moveInList(event) {
  const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
  const zone = /** @type {Element} */ (event.target).closest("[data-zone]");
  if (!step || !zone) return false;
  const items = [...zone.querySelectorAll("a, button")].filter((item) => item.checkVisibility());
  const at = items.indexOf(/** @type {HTMLElement} */ (document.activeElement));
  if (at < 0) return false;
  event.preventDefault();
  items[Math.min(items.length - 1, Math.max(0, at + step))].focus();
  return true;
}

/** Pages that are a form or a few lines to say: the keys of links and buttons, while nobody is writing in a box. Offline
   no link is followed, because there is nothing at its other end; `refuse` says so.
 * @param {{send: () => void, refuse: () => void}} actions */
export function listenOutsideBoxes({ send, refuse }) {
  document.addEventListener("click", (event) => {
    if (navigator.onLine || !(/** @type {Element} */ (event.target).closest(".shortcuts a"))) return;
    event.preventDefault();
    refuse();
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
      const target = shortcutOf(document, event.key.toLowerCase());
      if (target) event.preventDefault();
      target?.click();
    }
  });
}

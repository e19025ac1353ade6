/* The calls saved in this browser: on hold, interrupted, ended; opened by a number or by the reference a caller gives. The
   reference of a job sheet shows what was answered then. */

import { extra, load, queryOf, save, savedCalls, withExtras } from "./call_store.js";
import { SignedOut, fetchPart } from "./connection.js";
import { message } from "./messages.js";
import { parseReference, spelled } from "./reference.js";

/** @typedef {import("./call_store.js").Call} Call */

const MAX_CALLS = 9;
/** @type {Object<string, string>} */
const STATES = { held: "held", "": "interrupted", ended: "ended" };

export class SavedCalls {
  /** @param {{dialog: HTMLDialogElement, connection: import("./connection.js").Connection}} parts */
  constructor({ dialog, connection }) {
    this.dialog = dialog;
    this.connection = connection;
    /** @type {HTMLInputElement} */
    this.find = dialog.querySelector("#find-call");
    this.list = dialog.querySelector("#saved-call-list");
    this.status = dialog.querySelector("#saved-calls-status");
    this.previousSheet = dialog.querySelector("#previous-sheet");
    this.find.addEventListener("keydown", (event) => {
      if (event.key === "Enter") this.look(event);
    });
  }

  others() {
    return savedCalls().filter((call) => call.id !== this.connection.call.id);
  }

  open() {
    const calls = this.others().slice(0, MAX_CALLS);
    this.list.hidden = false;
    this.previousSheet.replaceChildren();
    this.list.replaceChildren(...calls.map((call, at) => this.line(call, at)));
    this.status.textContent = calls.length ? "" : message("no-calls");
    this.find.value = "";
    this.dialog.showModal();
    (this.list.querySelector("button") ?? this.find).focus();
  }

  /** @param {Call} call @param {number} at */
  line(call, at) {
    const button = document.createElement("button");
    button.type = "button";
    button.dataset.key = String(at + 1);
    const key = document.createElement("kbd");
    key.textContent = String(at + 1);
    const state = message(STATES[extra(call, "state")]);
    const when = new Date(call.changed).toLocaleString([], { dateStyle: "short", timeStyle: "short" });
    const count = Object.values(call.answers).filter(([value]) => value !== null).length;
    button.append(key, ` ${spelled(call.id)}, ${state}, ${when} (${count}) ${extra(call, "notes").slice(0, 60)}`);
    button.addEventListener("click", () => this.resume(call));
    const line = document.createElement("li");
    line.append(button);
    return line;
  }

  /** A reference of a call saved here, else one of a job sheet, which the server knows. @param {Event} event */
  async look(event) {
    event.preventDefault();
    const parsed = parseReference(this.find.value);
    const call = parsed && load(parsed.reference);
    this.list.hidden = false;
    this.previousSheet.replaceChildren();
    if (call) this.resume(call);
    else if (parsed && !parsed.isValid) this.status.textContent = message("misheard");
    else if (parsed) this.status.textContent = message("unknown-call");
    else if (this.find.value.trim()) await this.lookForSheet();
  }

  async lookForSheet() {
    const query = `${queryOf(this.connection.call)}&call-earlier=${encodeURIComponent(this.find.value)}`;
    try {
      this.previousSheet.innerHTML = await fetchPart(`${this.connection.path}earlier/?${query}`);
      this.status.textContent = "";
    } catch (problem) {
      this.status.textContent = message(problem instanceof SignedOut ? "signed-out" : "offline-page");
    }
    this.list.hidden = this.previousSheet.childElementCount > 0;
    this.previousSheet.querySelector("a")?.focus();
  }

  /** @param {Call} call */
  resume(call) {
    save(withExtras(call, { state: "" }));
    location.assign(`${this.connection.path}?${queryOf(call)}`);
  }
}

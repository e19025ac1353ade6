/* The calls kept in this browser: on hold, cut off, ended; opened by a number or by the reference a caller gives. The
   reference of a job sheet shows what was said then. */

import { beside, keptCalls, load, queryOf, save, withBeside } from "./calls.js";
import { SignedOut, fetchPart } from "./connection.js";
import { heardReference, spelled } from "./reference.js";

/** @typedef {import("./calls.js").Call} Call */

const MOST = 9;
/** @type {Object<string, string>} */
const STATES = { held: "held", "": "left", ended: "ended" };

export class KeptList {
  /** @param {{dialog: HTMLDialogElement, connection: import("./connection.js").Connection,
   *   texts: Object<string, string>}} parts */
  constructor({ dialog, connection, texts }) {
    this.dialog = dialog;
    this.connection = connection;
    this.texts = texts;
    /** @type {HTMLInputElement} */
    this.find = dialog.querySelector("#find-call");
    this.list = dialog.querySelector("#calls-list");
    this.earlier = dialog.querySelector("#earlier");
    this.find.addEventListener("keydown", (event) => {
      if (event.key === "Enter") this.look(event);
    });
  }

  others() {
    return keptCalls().filter((call) => call.id !== this.connection.call.id);
  }

  open() {
    const calls = this.others().slice(0, MOST);
    this.list.hidden = false;
    this.earlier.replaceChildren();
    this.list.replaceChildren(...calls.map((call, at) => this.line(call, at)));
    this.dialog.querySelector("#calls-say").textContent = calls.length ? "" : this.texts["no-calls"];
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
    const state = this.texts[STATES[beside(call, "state")]];
    const when = new Date(call.changed).toLocaleString([], { dateStyle: "short", timeStyle: "short" });
    const answered = Object.values(call.answers).filter(([value]) => value !== null).length;
    button.append(key, ` ${spelled(call.id)}, ${state}, ${when} (${answered}) ${beside(call, "notes").slice(0, 60)}`);
    button.addEventListener("click", () => this.resume(call));
    const line = document.createElement("li");
    line.append(button);
    return line;
  }

  /** A reference of a call kept here, else one of a job sheet, which the server knows. @param {Event} event */
  async look(event) {
    event.preventDefault();
    const say = this.dialog.querySelector("#calls-say");
    const heard = heardReference(this.find.value);
    const call = heard && load(heard.reference);
    this.list.hidden = false;
    this.earlier.replaceChildren();
    if (call) this.resume(call);
    else if (heard && !heard.sound) say.textContent = this.texts.misheard;
    else if (heard) say.textContent = this.texts["unknown-call"];
    else if (this.find.value.trim()) await this.lookEarlier(say);
  }

  /** @param {HTMLElement} say */
  async lookEarlier(say) {
    const asked = `${queryOf(this.connection.call)}&call-earlier=${encodeURIComponent(this.find.value)}`;
    try {
      this.earlier.innerHTML = await fetchPart(`${this.connection.place}earlier/?${asked}`);
      say.textContent = "";
    } catch (problem) {
      say.textContent = this.texts[problem instanceof SignedOut ? "door" : "stay"];
    }
    this.list.hidden = this.earlier.childElementCount > 0;
    this.earlier.querySelector("a")?.focus();
  }

  /** @param {Call} call */
  resume(call) {
    save(withBeside(call, { state: "" }));
    location.assign(`${this.connection.place}?${queryOf(call)}`);
  }
}

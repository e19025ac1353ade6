/* The calls kept in this browser: on hold, cut off, ended; opened by a number or by the reference a caller gives. The
   reference of a job sheet shows what was told then. */

import { beside, keptCalls, load, queryOf, save, withBeside } from "./calls.js";
import { SignedOut, fetchPart } from "./connection.js";
import { heardReference, spelled } from "./reference.js";

const MOST = 9;

export class KeptList {
  constructor({ dialog, connection, words }) {
    Object.assign(this, { dialog, connection, words });
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
    this.dialog.querySelector("#calls-say").textContent = calls.length ? "" : this.words["no-calls"];
    this.find.value = "";
    this.dialog.showModal();
    (this.list.querySelector("button") ?? this.find).focus();
  }

  line(call, at) {
    const button = document.createElement("button");
    button.type = "button";
    button.dataset.key = at + 1;
    const key = document.createElement("kbd");
    key.textContent = at + 1;
    const state = this.words[{ held: "held", "": "left", ended: "ended" }[beside(call, "state")]];
    const when = new Date(call.changed).toLocaleString([], { dateStyle: "short", timeStyle: "short" });
    const told = Object.values(call.answers).filter(([value]) => value !== null).length;
    button.append(key, ` ${spelled(call.id)}, ${state}, ${when} (${told}) ${beside(call, "notes").slice(0, 60)}`);
    button.addEventListener("click", () => this.resume(call));
    const line = document.createElement("li");
    line.append(button);
    return line;
  }

  /* A reference of a call kept here, else one of a job sheet, which the server knows. */
  async look(event) {
    event.preventDefault();
    const say = this.dialog.querySelector("#calls-say");
    const heard = heardReference(this.find.value);
    const call = heard && load(heard.reference);
    this.list.hidden = false;
    this.earlier.replaceChildren();
    if (call) this.resume(call);
    else if (heard && !heard.sound) say.textContent = this.words.misheard;
    else if (heard) say.textContent = this.words["unknown-call"];
    else if (this.find.value.trim()) await this.lookEarlier(say);
  }

  async lookEarlier(say) {
    const asked = `${queryOf(this.connection.call)}&call-earlier=${encodeURIComponent(this.find.value)}`;
    try {
      this.earlier.innerHTML = await fetchPart(`${this.connection.place}earlier/?${asked}`);
      say.textContent = "";
    } catch (problem) {
      say.textContent = this.words[problem instanceof SignedOut ? "door" : "stay"];
    }
    this.list.hidden = this.earlier.childElementCount > 0;
    this.earlier.querySelector("a")?.focus();
  }

  resume(call) {
    save(withBeside(call, { state: "" }));
    location.assign(`${this.connection.place}?${queryOf(call)}`);
  }
}

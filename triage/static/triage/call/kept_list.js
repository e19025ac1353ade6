/* The calls kept in this browser: on hold, cut off, ended; opened by a number or by the reference a caller gives. */

import { keptCalls, load, queryOf, save } from "./calls.js";
import { heardReference, spelled } from "./reference.js";

const MOST = 9;

export class KeptList {
  constructor({ dialog, connection, words }) {
    Object.assign(this, { dialog, connection, words });
    this.find = dialog.querySelector("#find-call");
    this.find.addEventListener("keydown", (event) => {
      if (event.key === "Enter") this.look(event);
    });
  }

  others() {
    return keptCalls().filter((call) => call.id !== this.connection.call.id);
  }

  open() {
    const list = this.dialog.querySelector("#calls-list");
    const calls = this.others().slice(0, MOST);
    list.replaceChildren(...calls.map((call, at) => this.line(call, at)));
    this.dialog.querySelector("#calls-say").textContent = calls.length ? "" : this.words["no-calls"];
    this.find.value = "";
    this.dialog.showModal();
    (list.querySelector("button") ?? this.find).focus();
  }

  line(call, at) {
    const button = document.createElement("button");
    button.type = "button";
    button.dataset.key = at + 1;
    const key = document.createElement("kbd");
    key.textContent = at + 1;
    const state = this.words[{ held: "held", "": "left", ended: "ended" }[call.state]];
    const when = new Date(call.changed).toLocaleString([], { dateStyle: "short", timeStyle: "short" });
    const told = Object.values(call.answers).filter(([value]) => value !== null).length;
    button.append(key, ` ${spelled(call.id)}, ${state}, ${when} (${told}) ${call.notes.slice(0, 60)}`);
    button.addEventListener("click", () => this.resume(call));
    const line = document.createElement("li");
    line.append(button);
    return line;
  }

  look(event) {
    event.preventDefault();
    const say = this.dialog.querySelector("#calls-say");
    const heard = heardReference(this.find.value);
    const call = heard && load(heard.reference);
    if (call) this.resume(call);
    else say.textContent = heard && !heard.sound ? this.words.misheard : this.words["unknown-call"];
  }

  resume(call) {
    save({ ...call, state: "", changed: Date.now() });
    location.assign(`${this.connection.place}?${queryOf(call)}`);
  }
}

/* The box for what the caller says, and the answers suggested for it. Nothing is recorded but by a number or Enter on a
   suggestion. */

import { MAX_SUGGESTIONS, match, readIndex } from "./matching.js";
import { enforceMaxLength } from "./max_length.js";
import { announce, message } from "./messages.js";

/** @typedef {import("./matching.js").Line} Line */

const SAVE_AFTER_MS = 400; // without a letter
const RETRY_MS = 3000;

export class Suggestions {
  /** @param {{box: HTMLTextAreaElement, list: HTMLElement, connection: import("./connection.js").Connection}} parts */
  constructor({ box, list, connection }) {
    this.box = box;
    this.list = list;
    this.connection = connection;
    /** @type {import("./matching.js").Index | null} */
    this.index = null;
    /** @type {Line[]} */
    this.lines = [];
    box.value = connection.extra("said");
    box.addEventListener("input", () => {
      const fits = enforceMaxLength(box);
      this.update();
      if (!fits) announce(message("too-long", { max: box.dataset.maxLength }));
      clearTimeout(this.pause);
      this.pause = setTimeout(() => connection.save({ said: box.value }), SAVE_AFTER_MS);
    });
    list.addEventListener("click", (event) => {
      const line = /** @type {Element} */ (event.target).closest("button[data-index]");
      if (line) this.press(Number(line.dataset.index));
    });
  }

  /** @param {string} address */
  async fetchIndex(address) {
    try {
      const response = await fetch(address);
      this.index = readIndex((await response.json()).answers);
      this.list.ariaBusy = "false";
      if (this.box.value) this.update();
    } catch {
      setTimeout(() => this.fetchIndex(address), RETRY_MS);
    }
  }

  answers() {
    return Object.fromEntries(Object.entries(this.connection.call.answers).map(([name, [value]]) => [name, value]));
  }

  update() {
    const text = this.box.value;
    this.box.rows = text.includes("\n") || text.length > 70 ? 3 : 1;
    if (!this.index) return;
    const nothing = { lines: /** @type {Line[]} */ ([]), truncated: false };
    const { lines, truncated } = text.trim() ? match(this.index, text, this.answers()) : nothing;
    this.lines = lines;
    this.draw();
    if (truncated) announce(message("long"));
    else if (text.trim()) announce(lines.length ? message("found", { n: lines.length }) : message("none"));
  }

  /** @param {Line} line */
  isRecorded(line) {
    const answers = this.answers();
    return Object.entries(line.pairs).every(([name, value]) => answers[name] === value);
  }

  draw() {
    const rows = this.lines.map((line, at) => this.button(line, at));
    const open = this.list.parentElement.contains(document.activeElement);
    this.list.replaceChildren(...rows);
    this.list.hidden = rows.length === 0 || !open;
  }

  /** @param {Line} line @param {number} at */
  button(line, at) {
    const button = document.createElement("button");
    button.type = "button";
    button.dataset.index = String(at);
    button.dataset.key = String(at + 1);
    button.className = ["", "caution", "urgent"][line.danger];
    const recorded = this.isRecorded(line);
    button.setAttribute("aria-pressed", String(recorded));
    const key = document.createElement("kbd");
    key.textContent = String(at + 1);
    const answer = document.createElement("strong");
    answer.textContent = line.answer;
    const question = document.createElement("span");
    question.textContent = recorded ? `${line.question} (${message("recorded-mark")})` : line.question;
    button.append(key, " ", answer, " ", question);
    return button;
  }

  /** @param {number} at */
  async press(at) {
    const line = this.lines[at];
    if (!line) return;
    this.connection.save({ said: this.box.value });
    const what = `${line.question}: ${line.answer}`;
    if (this.isRecorded(line)) {
      announce(message("already-recorded", { what }));
      return;
    }
    announce(message("recorded", { what }));
    await this.connection.record(line.pairs);
    this.updateKeepingNumbers();
    this.list.querySelectorAll("button")[at]?.focus();
  }

  /* Suggestions on the screen keep their numbers; what an answer has opened up comes after them. */
  updateKeepingNumbers() {
    const found = match(this.index, this.box.value, this.answers()).lines;
    const shown = new Set(this.lines.map((line) => line.row));
    this.lines = [...this.lines, ...found.filter((line) => !shown.has(line.row))].slice(0, MAX_SUGGESTIONS);
    this.draw();
  }

  focusList() {
    this.list.hidden = this.lines.length === 0;
    this.list.querySelector("button")?.focus();
  }

  focusBox() {
    this.box.focus();
    this.draw();
  }

  close() {
    if (this.box.value !== this.connection.extra("said")) this.connection.save({ said: this.box.value });
    this.list.hidden = true;
  }
}

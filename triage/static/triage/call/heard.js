/* The box for what the caller says, and the lines found for it. Nothing is recorded but by a number or Enter on a line. */

import { limited } from "./limited.js";
import { MOST, match, readIndex } from "./matching.js";

/** @typedef {import("./matching.js").Line} Line */

const A_PAUSE = 400; // after which what was typed is kept

export class Heard {
  /** @param {{box: HTMLTextAreaElement, list: HTMLElement, connection: import("./connection.js").Connection,
   *   texts: Object<string, string>, said: (sentence: string) => void}} parts */
  constructor({ box, list, connection, texts, said }) {
    this.box = box;
    this.list = list;
    this.connection = connection;
    this.texts = texts;
    this.said = said;
    /** @type {import("./matching.js").Index | null} */
    this.index = null;
    /** @type {Line[]} */
    this.lines = [];
    box.value = connection.beside("said");
    box.addEventListener("input", () => {
      const whole = limited(box);
      this.look();
      if (!whole) this.said(texts["too-long"].replace("%(most)s", box.dataset.longest));
      clearTimeout(this.pause);
      this.pause = setTimeout(() => connection.keep({ said: box.value }), A_PAUSE);
    });
    list.addEventListener("click", (event) => {
      const line = /** @type {Element} */ (event.target).closest("button[data-at]");
      if (line) this.press(Number(line.dataset.at));
    });
  }

  /** @param {string} address */
  async fetchPhrases(address) {
    try {
      const response = await fetch(address);
      this.index = readIndex((await response.json()).answers);
      this.list.ariaBusy = "false";
      if (this.box.value) this.look();
    } catch {
      setTimeout(() => this.fetchPhrases(address), 3000);
    }
  }

  answers() {
    return Object.fromEntries(Object.entries(this.connection.call.answers).map(([name, [value]]) => [name, value]));
  }

  look() {
    const text = this.box.value;
    this.box.rows = text.includes("\n") || text.length > 70 ? 3 : 1;
    if (!this.index) return;
    const { lines, cut } = text.trim() ? match(this.index, text, this.answers()) : { lines: [], cut: false };
    this.lines = lines;
    this.draw();
    if (cut) this.said(this.texts.long);
    else if (text.trim())
      this.said(lines.length ? this.texts.found.replace("%(n)s", String(lines.length)) : this.texts.none);
  }

  /** @param {Line} line */
  isRecorded(line) {
    const answers = this.answers();
    return Object.entries(line.pairs).every(([name, value]) => answers[name] === value);
  }

  draw() {
    const rows = this.lines.map((line, at) => {
      const button = document.createElement("button");
      button.type = "button";
      button.dataset.at = String(at);
      button.dataset.key = String(at + 1);
      button.className = ["", "caution", "grave"][line.danger];
      const recorded = this.isRecorded(line);
      button.setAttribute("aria-pressed", String(recorded));
      const key = document.createElement("kbd");
      key.textContent = String(at + 1);
      const answer = document.createElement("strong");
      answer.textContent = line.answer;
      const question = document.createElement("span");
      question.textContent = recorded ? `${line.question} (${this.texts.already})` : line.question;
      button.append(key, " ", answer, " ", question);
      return button;
    });
    const open = this.list.parentElement.contains(document.activeElement);
    this.list.replaceChildren(...rows);
    this.list.hidden = rows.length === 0 || !open;
  }

  /** @param {number} at */
  async press(at) {
    const line = this.lines[at];
    if (!line) return;
    this.connection.keep({ said: this.box.value });
    const what = `${line.question}: ${line.answer}`;
    if (this.isRecorded(line)) {
      this.said(this.texts["recorded-before"].replace("%(what)s", what));
      return;
    }
    this.said(this.texts.recorded.replace("%(what)s", what));
    await this.connection.record(line.pairs);
    this.lookAgain();
    this.list.querySelectorAll("button")[at]?.focus();
  }

  /* Lines on the screen keep their numbers; what an answer has opened up comes after them. */
  lookAgain() {
    const found = match(this.index, this.box.value, this.answers()).lines;
    const shown = new Set(this.lines.map((line) => line.row));
    this.lines = [...this.lines, ...found.filter((line) => !shown.has(line.row))].slice(0, MOST);
    this.draw();
  }

  enter() {
    this.list.hidden = this.lines.length === 0;
    this.list.querySelector("button")?.focus();
  }

  leave() {
    if (this.box.value !== this.connection.beside("said")) this.connection.keep({ said: this.box.value });
    this.list.hidden = true;
  }

  come() {
    this.box.focus();
    this.draw();
  }
}

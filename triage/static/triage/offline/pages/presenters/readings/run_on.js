/* The run-on test: when the fan was last heard and when it was first found still, in minutes after switch-off. As
   `triage/check_pages/presenters/readings/run_on.py`. */

import { RUN_ON_FIELDS, readRunOn, ENDLESS_MINUTES } from "../../../engine/readings/run_on.js";
import { encode } from "../../../engine/readings/encoding.js";
import { minutesLine } from "../../drawings/minutes_line.js";
import { readingText } from "../reading_text.js";

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("./form_input.js").FormInput} FormInput */

const USUAL_MINUTES = 30;
const LONG_MINUTES = 60;
const SHOWN_MINUTES = 90;
const MAX_MINUTES = 240;

export const RUN_ON = {
  limits: RUN_ON_FIELDS,

  /** Where only the end is known, it was heard until then; a cold oven needs no time.
   * @param {CheckRequest} _ @param {FormInput} found */
  write(_, { figures }) {
    const heard = figures.get("heard") ?? figures.get("stopped") ?? (figures.has("cold") ? "0" : "");
    return encode(RUN_ON_FIELDS, new Map([...figures, ["heard", heard]]));
  },

  /** @param {CheckRequest} checkRequest @param {string} text */
  drawing(checkRequest, text) {
    const { minutes, running } = readRunOn(text);
    const endless = minutes.value >= ENDLESS_MINUTES;
    const value = endless ? SHOWN_MINUTES : minutes.value;
    const unsure = 2 * minutes.uncertainty;
    const length = Math.min(Math.max(SHOWN_MINUTES, value + unsure), MAX_MINUTES);
    const stretches = [
      { start: 0, end: USUAL_MINUTES, kind: "plate", name: "usual" },
      { start: USUAL_MINUTES, end: LONG_MINUTES, kind: "long", name: "long" },
      { start: LONG_MINUTES, end: length, kind: "never", name: "too-long" },
    ];
    /** @type {[number, number, boolean]} */
    const seen = [running ? value : Math.max(value - unsure, 0), value + unsure, running];
    const facts = {
      kind: "run-on",
      found: readingText(checkRequest, text, { kind: "run-on" }),
      silent: !running && !minutes.value,
      still_running: running && !endless,
    };
    return minutesLine(length, stretches, seen, "minutes-after-switch-off", facts);
  },
};

/* The run-on test: when the fan was last heard and when it was first found still. As
   `triage/check_pages/presenters/readings/run_on.py`. */

import { RUN_ON_FIELDS, WITHOUT_END, readRunOn } from "../../../engine/readings/run_on.js";
import { writtenReading } from "../../../engine/readings/written.js";
import { minutesLine } from "../../drawings/minutes_line.js";
import { readingText } from "../reading_text.js";
import { blankFor } from "./typed.js";

const USUAL_MINUTES = 30;
const LONG_MINUTES = 60;
const SHOWN_MINUTES = 90;
const LONGEST_SHOWN = 240;

export const RUN_ON = {
  read(visit, typed) {
    typed.read(runOnBlanks(visit), RUN_ON_FIELDS);
    for (const name of ["cold", "much-heat"]) if (typed.ticked(name)) typed.figures.set(name, "1");
  },

  groups(visit, typed) {
    const ticks = [
      typed.tick("cold", visit.say("The oven is stone cold and the fan still runs")),
      typed.tick("much-heat", visit.say("It was after a very hot clean, or a long time on high or on the grill")),
    ];
    return [{ fields: [...runOnBlanks(visit).map((blank) => typed.fieldOf(blank)), ...ticks], tool: "run-on" }];
  },

  /* Where only the end is known, it was heard until then; a cold oven needs no time. */
  write(visit, { figures }) {
    const heard = figures.get("heard") ?? figures.get("stopped") ?? (figures.has("cold") ? "0" : "");
    return writtenReading(RUN_ON_FIELDS, new Map([...figures, ["heard", heard]]));
  },

  told(visit, text) {
    const { minutes, running } = readRunOn(text);
    const endless = minutes.value >= WITHOUT_END;
    const value = endless ? SHOWN_MINUTES : minutes.value;
    const unsure = 2 * minutes.uncertainty;
    const length = Math.min(Math.max(SHOWN_MINUTES, value + unsure), LONGEST_SHOWN);
    const stretches = [
      { start: 0, end: USUAL_MINUTES, kind: "plate", words: visit.say("usual") },
      { start: USUAL_MINUTES, end: LONG_MINUTES, kind: "long", words: visit.say("long") },
      { start: LONG_MINUTES, end: length, kind: "never", words: visit.say("too long") },
    ];
    const words = visit.say("The fan was %(found)s. Up to 30 minutes is usual, up to 60 is long, more is too long.", {
      found: readingText(visit, text, { kind: "run-on" }),
    });
    const seen = [running ? value : Math.max(value - unsure, 0), value + unsure, running];
    const lines = [
      running || minutes.value
        ? visit.say("Times are as after ordinary baking. After much heat a fan may run half as long again.")
        : visit.say("That counts if the oven was hot and its fan used to run on."),
    ];
    if (running && !endless) {
      lines.push(visit.say("It was not found still yet. Look again later, and once more when the oven is stone cold."));
    }
    return { drawing: minutesLine(length, stretches, seen, visit.say("minutes after switch-off"), words), lines };
  },
};

function runOnBlanks(visit) {
  return [
    blankFor("heard", visit.say("Last heard running"), visit.say("Minutes after you switched the oven off"), "min"),
    blankFor(
      "stopped",
      visit.say("First found still"),
      visit.say("Leave empty while it runs. 0 if it never ran on"),
      "min",
    ),
  ];
}

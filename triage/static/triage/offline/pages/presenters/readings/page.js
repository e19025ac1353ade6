/* A reading on a page of its own: danger signs and cautions first, then its gates, then the form. As
   `triage/check_pages/presenters/readings/page.py`. */

import { NONE_OF_THESE, SCREEN } from "../../../engine/pack.js";
import { problemSentences } from "../problems.js";
import { dangerPage } from "../question.js";
import { cautionsOf, gateShown, isOpen } from "../task.js";
import { measuredBy, readingForm } from "./form.js";

/** The template and the page; the danger signs first where nobody looked through them yet. */
export function readingPage(visit, kind) {
  if (!visit.reading.answers.has(SCREEN)) {
    const signs = dangerPage(visit);
    return [
      "danger",
      { ...signs, none: { ...signs.none, href: visit.links.reading(kind, [[SCREEN, NONE_OF_THESE]]) } },
    ];
  }
  const tasks = tasksOf(visit, kind);
  const [first] = tasks;
  const removed = visit.place.region.removes.has(first.id);
  const opened = isOpen(visit, first) && !removed;
  const measured = new Set(tasks.flatMap((task) => measuredBy(visit.pack, task)));
  const here = (more) => visit.links.reading(kind, more);
  return [
    "reading",
    {
      heading: visit.texts.readings.get(kind).name,
      intro: visit.texts.tasks.get(first.id).why,
      removed,
      region_name: visit.place.name,
      heat: first.needsHeat,
      cautions: cautionsOf(visit, first),
      gates: removed ? [] : first.gates.map((gate) => gateShown(visit, first, gate, here)),
      how: first.needsHeat || !opened ? "" : visit.texts.questions.get(first.outcome).look,
      form: opened ? readingForm(visit, [...measured], visit.links.readingPath(kind)) : null,
      check_href: visit.links.onward(),
      part: first.picture,
      local_line: visit.place.local_line,
      problems: problemSentences(visit),
    },
  ];
}

/* The tasks whose figures are of this kind, in the pack's order. */
function tasksOf(visit, kind) {
  return [...visit.pack.tasks.values()].filter((task) => measuredBy(visit.pack, task)[0]?.measurement.kind === kind);
}

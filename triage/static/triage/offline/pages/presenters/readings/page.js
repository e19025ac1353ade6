/* A reading on a page of its own: danger signs and cautions first, then its gates, then the form. As
   `triage/check_pages/presenters/readings/page.py`. */

import { NONE_OF_THESE, SCREEN } from "../../../engine/pack.js";
import { problemNotes } from "../problems.js";
import { dangerPage } from "../question.js";
import { cautionsOf, gateShown, isOpen } from "../task.js";
import { measuredBy, readingForm } from "./form.js";

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("../task.js").Here} Here */

/** The template and the page; the danger signs first where nobody looked through them yet.
 * @param {CheckRequest} checkRequest @param {string} kind @returns {[template: string, page: any]} */
export function readingPage(checkRequest, kind) {
  if (!checkRequest.answers.has(SCREEN)) {
    const signs = dangerPage(checkRequest);
    return [
      "danger",
      { ...signs, none: { ...signs.none, href: checkRequest.links.reading(kind, [[SCREEN, NONE_OF_THESE]]) } },
    ];
  }
  const tasks = tasksOf(checkRequest, kind);
  const [first] = tasks;
  const removed = checkRequest.check.region.removedTasks.has(first.id);
  const opened = isOpen(checkRequest, first) && !removed;
  const measured = new Set(tasks.flatMap((task) => measuredBy(checkRequest.pack, task)));
  /** @type {Here} */
  const here = (more) => checkRequest.links.reading(kind, more);
  return [
    "reading",
    {
      heading: checkRequest.texts.readings.get(kind).name,
      intro: checkRequest.texts.tasks.get(first.id).why,
      removed,
      region_name: checkRequest.region.name,
      heat: first.needsHeat,
      cautions: cautionsOf(checkRequest, first),
      gates: removed ? [] : first.gates.map((gate) => gateShown(checkRequest, first, gate, here)),
      how: first.needsHeat || !opened ? "" : checkRequest.texts.questions.get(first.outcome).look,
      form: opened ? readingForm(checkRequest, [...measured], checkRequest.links.readingPath(kind)) : null,
      check_href: checkRequest.links.continueUrl(),
      part: first.picture,
      local_line: checkRequest.region.local_line,
      problems: problemNotes(checkRequest),
    },
  ];
}

/** The tasks whose figures are of this kind, in the pack's order.
 * @param {CheckRequest} checkRequest @param {string} kind */
function tasksOf(checkRequest, kind) {
  return [...checkRequest.pack.tasks.values()].filter(
    (task) => measuredBy(checkRequest.pack, task)[0]?.measurement.kind === kind,
  );
}

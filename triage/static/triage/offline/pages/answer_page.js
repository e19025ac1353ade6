/* The pages of a check, answered where the phone is: the same addresses, the same bytes as the server's. The one entry
   of the pages. What is not the phone's to answer comes back as null: forms that send, anything else, and pages of a
   check done for a firm, unless there is no connection. Those are then made without the firm's name and colours. */

import { raisedFlags } from "../engine/safety.js";
import { mayBook } from "./booking.js";
import { fillNodes, scopeOf } from "./filling.js";
import { advicePage } from "./presenters/advice.js";
import { exitPage } from "./presenters/leave.js";
import { makeSafePage } from "./presenters/make_safe.js";
import { emergencyCall } from "./presenters/numbers.js";
import { askedPage, dangerPage } from "./presenters/question.js";
import { READING_KINDS } from "./presenters/readings/kinds.js";
import { readingPage } from "./presenters/readings/page.js";
import { startPage } from "./presenters/start.js";
import { summaryText } from "./presenters/summary.js";
import { taskPage } from "./presenters/task.js";
import { firmIn, openVisit } from "./visit.js";

/** @typedef {{path: string, query: string, fragment: boolean, offline: boolean, language: string, origin: string}}
 *   PageRequest `query` without its question mark; `offline` whether the site cannot be reached; `language` as in an
 *   Accept-Language header; `origin` the site's, without a slash
 * @typedef {{status: number, html: string, headers: Object<string, string>}} PageAnswer */

const HTML = { "Content-Type": "text/html; charset=utf-8" };
const TEXT = {
  "Content-Type": "text/plain; charset=utf-8",
  "Content-Disposition": 'attachment; filename="oven-check.txt"',
};

/** The page at an address, or null where it is not the phone's to answer.
 * @param {import("./visit.js").Site} site @param {PageRequest} request @returns {PageAnswer | null} */
export function answerPage(site, { path, query, fragment, offline, language, origin }) {
  const route = routeOf(site.pages.paths, path);
  if (!route || (firmIn(query) && !offline)) return null;
  const visit = openVisit(site, query, language, origin);
  if (route.name === "summary") return { status: 200, html: summaryText(visit), headers: TEXT };
  const [name, page] = pageFor(visit, route);
  if (!page) return { status: 404, html: filledPage(visit, "404", null, false), headers: HTML };
  const found = (page.form ?? page.reading)?.result;
  if (found?.alarm) return toTheCheck(found.continue_href, fragment);
  return { status: 200, html: filledPage(visit, name, page, fragment), headers: { ...HTML, "X-Check-Step": name } };
}

/* Figures that raise a red flag are not shown as a result: the check opens with them, and says what to do first. */
function toTheCheck(address, fragment) {
  if (fragment) return { status: 200, html: "", headers: { ...HTML, "HX-Redirect": address } };
  return { status: 302, html: "", headers: { ...HTML, Location: address } };
}

const ANSWERED = ["start", "danger", "step", "task", "reading", "summary", "exit"];

/* The page a path stands for; a star in a path stands for the name of a task, a reading or a way out. */
function routeOf(paths, path) {
  for (const name of ANSWERED) {
    const [before, after] = paths[name].split("*");
    if (after === undefined && path === before) return { name, of: "" };
    if (after === undefined || !path.startsWith(before) || !path.endsWith(after)) continue;
    const of = path.slice(before.length, -after.length);
    if (/^[-a-zA-Z0-9_]+$/.test(of)) return { name, of };
  }
  return null;
}

/* The name of its template and what it shows; nothing to show where there is no such page. */
function pageFor(visit, { name, of }) {
  if (name === "start") return ["start", startPage(visit)];
  if (name === "danger") return ["danger", dangerPage(visit)];
  if (name === "task") return ["task", visit.texts.tasks.has(of) ? taskPage(visit, of) : null];
  if (name === "reading") return READING_KINDS.has(of) ? readingAt(visit, of) : ["reading", null];
  if (name === "exit") return ["exit", visit.texts.start.exits.has(of) ? exitPage(visit, of) : null];
  return stepPage(visit);
}

/* Nothing is measured once something dangerous was said. */
function readingAt(visit, kind) {
  return raisedFlags(visit.pack, visit.reading.answers).length ? stepPage(visit) : readingPage(visit, kind);
}

function stepPage(visit) {
  const { step } = visit;
  if (step.kind === "ask") return askedPage(visit, step);
  if (step.kind === "make-safe") return ["make_safe", makeSafePage(visit, step)];
  if (step.kind === "advice") return ["advice", advicePage(visit, step)];
  return ["exit", exitPage(visit, step.reason)];
}

function filledPage(visit, name, page, fragment) {
  const { pages } = visit.site;
  const scope = scopeOf({
    page,
    notices: visit.notices,
    danger_href: visit.links.danger(),
    start_href: visit.links.start(),
    summary_href: visit.links.summary(),
    emergency: emergencyCall(visit.place),
    offline_booking_href: visit.links.firm && mayBook(visit) ? visit.links.handOver() : "",
    LANGUAGE_CODE: pages.language,
    LANGUAGE_BIDI: pages.bidi,
  });
  if (fragment) return fillNodes(pages, scope, pages.templates[`_${name}`]);
  const blocks = pages.blocks[name];
  return fillNodes({ templates: pages.templates, blocks }, scope, pages.templates[blocks ? "base" : name]);
}

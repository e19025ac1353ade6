/* The pages of a check, answered where the phone is: the same addresses, the same bytes as the server's. The one entry
   of the pages. What is not the phone's to answer comes back as null: forms that send, anything else, and pages of a
   check done for a firm, unless there is no connection. Those are then made without the firm's name and colours. */

import { mayBook } from "./booking.js";
import { fillNodes, scopeOf } from "./filling.js";
import { resultPage } from "./presenters/result.js";
import { outOfScopePage } from "./presenters/out_of_scope.js";
import { emergencyPage } from "./presenters/emergency.js";
import { emergencyCall } from "./presenters/phone_numbers.js";
import { askedPage, dangerPage } from "./presenters/question.js";
import { READING_KINDS } from "./presenters/readings/kinds.js";
import { readingPage } from "./presenters/readings/page.js";
import { startPage } from "./presenters/start.js";
import { summaryText } from "./presenters/summary.js";
import { taskPage } from "./presenters/task.js";
import { firmIn, readCheckRequest } from "./request.js";

/** @typedef {{path: string, query: string, fragment: boolean, offline: boolean, language: string, origin: string}}
 *   PageRequest `query` without its question mark; `offline` whether the site cannot be reached; `language` as in an
 *   Accept-Language header; `origin` the site's, without a slash
 * @typedef {import("./request.js").CheckRequest} CheckRequest
 * @typedef {[template: string, page: any]} NamedPage what the template shows; null where there is no such page
 * @typedef {{status: number, html: string, headers: Object<string, string>}} PageAnswer */

const HTML = { "Content-Type": "text/html; charset=utf-8" };
const TEXT = {
  "Content-Type": "text/plain; charset=utf-8",
  "Content-Disposition": 'attachment; filename="oven-check.txt"',
};

/** The page at an address, or null where it is not the phone's to answer.
 * @param {import("./request.js").Site} site @param {PageRequest} request @returns {PageAnswer | null} */
export function answerPage(site, { path, query, fragment, offline, language, origin }) {
  const route = routeOf(site.pages.paths, path);
  if (!route || (firmIn(query) && !offline)) return null;
  const checkRequest = readCheckRequest(site, query, language, origin);
  if (route.name === "summary") return { status: 200, html: summaryText(checkRequest), headers: TEXT };
  const [name, page] = pageFor(checkRequest, route);
  if (!page) return { status: 404, html: filledPage(checkRequest, "404", null, false), headers: HTML };
  const found = (page.form ?? page.reading)?.result;
  if (found?.alarm) return toTheCheck(found.continue_href, fragment);
  return {
    status: 200,
    html: filledPage(checkRequest, name, page, fragment),
    headers: { ...HTML, "X-Check-Step": name },
  };
}

/** Figures that raise a red flag are not shown as a result: the check opens with them, and says what to do first.
 * @param {string} address @param {boolean} fragment @returns {PageAnswer} */
function toTheCheck(address, fragment) {
  if (fragment) return { status: 200, html: "", headers: { ...HTML, "HX-Redirect": address } };
  return { status: 302, html: "", headers: { ...HTML, Location: address } };
}

const ANSWERED = ["start", "danger", "step", "task", "reading", "summary", "exit"];

/** The page a path stands for; a star in a path stands for the name of a task, a reading or a way out.
 * @param {Object<string, string>} paths @param {string} path */
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

/** The name of its template and what it shows; nothing to show where there is no such page.
 * @param {CheckRequest} checkRequest @param {{name: string, of: string}} route @returns {NamedPage} */
function pageFor(checkRequest, { name, of }) {
  if (name === "start") return ["start", startPage(checkRequest)];
  if (name === "danger") return ["danger", dangerPage(checkRequest)];
  if (name === "task") return ["task", checkRequest.texts.tasks.has(of) ? taskPage(checkRequest, of) : null];
  if (name === "reading") return READING_KINDS.has(of) ? readingAt(checkRequest, of) : ["reading", null];
  if (name === "exit")
    return ["out_of_scope", checkRequest.texts.start.exits.has(of) ? outOfScopePage(checkRequest, of) : null];
  return stepPage(checkRequest);
}

/** Nothing is measured once something dangerous was said.
 * @param {CheckRequest} checkRequest @param {string} kind @returns {NamedPage} */
function readingAt(checkRequest, kind) {
  return checkRequest.check.flags.length ? stepPage(checkRequest) : readingPage(checkRequest, kind);
}

/** @param {CheckRequest} checkRequest @returns {NamedPage} */
function stepPage(checkRequest) {
  const { step } = checkRequest;
  if (step.kind === "question") return askedPage(checkRequest, step);
  if (step.kind === "emergency") return ["emergency", emergencyPage(checkRequest, step)];
  if (step.kind === "result") return ["result", resultPage(checkRequest, step)];
  return ["out_of_scope", outOfScopePage(checkRequest, step.reason)];
}

/** @param {CheckRequest} checkRequest @param {string} name @param {any} page @param {boolean} fragment */
function filledPage(checkRequest, name, page, fragment) {
  const { pages } = checkRequest.site;
  const scope = scopeOf({
    page,
    notices: checkRequest.notices,
    danger_href: checkRequest.links.danger(),
    start_href: checkRequest.links.restart(),
    summary_href: checkRequest.links.summary(),
    emergency: emergencyCall(checkRequest.region),
    offline_booking_href: checkRequest.links.firm && mayBook(checkRequest) ? checkRequest.links.handOver() : "",
    LANGUAGE_CODE: pages.language,
    LANGUAGE_BIDI: pages.bidi,
  });
  if (fragment) return fillNodes(pages, scope, pages.templates[`_${name}`]);
  const blocks = pages.blocks[name];
  return fillNodes({ templates: pages.templates, blocks }, scope, pages.templates[blocks ? "base" : name]);
}

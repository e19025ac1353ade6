/* The result: how serious it is, what to do now, what it probably is, and who does the rest. As
   `triage/check_pages/presenters/result.py`. */

import { roundHalfEven } from "../rounding.js";
import { answersSoFar, DID } from "./answers.js";
import { causesOf } from "./causes.js";
import { flagNote } from "./flags.js";
import { numbersFor } from "./phone_numbers.js";
import { pricesOf } from "./prices.js";
import { problemNotes } from "./problems.js";
import { HOUSEHOLDER, localRules, PREPARATION, personLabel, professionalJobs } from "./professional_work.js";
import { summaryOf } from "./summary.js";
import { resultOf } from "./task.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../engine/check.js").Result} Result
 * @typedef {import("../../engine/pack.js").Task} Task
 * @typedef {import("../../engine/advice.js").Verdict} Verdict */

const LEAVE_OFF = "leave-off";
const STRICTER_SHARE = 0.25;
const LIKELY = 0.35;
export const NETWORK = "network-operator";

/** @param {CheckRequest} checkRequest @param {Result} step */
export function resultPage(checkRequest, step) {
  const leading = leadingFault(checkRequest, step);
  const solved = isSolved(checkRequest, step);
  const common = {
    band: step.verdict.band,
    solved,
    cautions: step.cautions.map((flag) => flagNote(checkRequest, flag, false)),
    local_rules: localRules(checkRequest, step),
    phone_numbers: numbersFor(checkRequest, leading.performedBy === NETWORK ? ["network"] : []),
    part: checkRequest.texts.faults.get(leading.id).picture,
    answers: answersSoFar(checkRequest),
    problems: problemNotes(checkRequest),
  };
  return { ...common, ...(solved ? { fixed: fixedTexts(checkRequest) } : unsolvedFacts(checkRequest, step)) };
}

/** Whether a task put it right; never while a caution or a grave band stands.
 * @param {CheckRequest} checkRequest @param {Result} step */
export function isSolved(checkRequest, { cautions, verdict }) {
  const fixed = [...checkRequest.answers].some(([o, answer]) => o.startsWith(DID) && answer === "fixed");
  return fixed && !cautions.length && ["normal", "self-check"].includes(verdict.band);
}

/** @param {CheckRequest} checkRequest */
function fixedTexts(checkRequest) {
  const fixing = [...checkRequest.pack.tasks.values()].filter(
    ({ id }) => checkRequest.answers.get(DID + id) === "fixed",
  );
  return fixing.map((task) => resultOf(checkRequest, task));
}

/** @param {CheckRequest} checkRequest @param {Result} step */
function unsolvedFacts(checkRequest, step) {
  const { verdict } = step;
  const stayOff = leaveOffText(checkRequest, step);
  const jobs = professionalJobs(checkRequest, step);
  const alike = verdict.alike.length > 1 ? verdict.alike : [];
  const priced = verdict.band !== "normal";
  return {
    person: personLabel(checkRequest, leadingFault(checkRequest, step).performedBy),
    cause: checkRequest.texts.faults.get(verdict.causes[0].fault).name,
    likely: verdict.causes[0].chance >= LIKELY,
    leave_off: Boolean(stayOff) || isGrave(step),
    leave_off_text: stayOff,
    actions: actionsOf(checkRequest, step).filter(({ text }) => text !== ""),
    causes: causesOf(checkRequest, verdict),
    indistinguishable: namesOf(checkRequest, alike),
    split: alike.length ? checkRequest.texts.families.get(verdict.family).split : "",
    also_check: namesOf(checkRequest, verdict.alsoCheck),
    tasks: step.tasks.map((task) => taskLink(checkRequest, task)),
    jobs,
    preparation: jobs.length ? PREPARATION : [],
    prices: priced ? pricesOf(checkRequest) : null,
    costs_href: priced ? checkRequest.links.costs() : "",
    summary: summaryOf(checkRequest),
  };
}

/** Whether nothing on the page may let the oven be used: the band says so, or a caution was raised.
 * @param {Result} step */
function isGrave(step) {
  return step.verdict.band === "make-safe" || step.cautions.length > 0;
}

/** What the cause that decides it says of leaving the oven off; nothing where no likely cause asks for it.
 * @param {CheckRequest} checkRequest @param {Result} step */
function leaveOffText(checkRequest, step) {
  const { causes } = step.verdict;
  const off = causes.filter(({ fault }) => checkRequest.pack.faults.get(fault).interimUse === LEAVE_OFF);
  const share = off.reduce((total, { chance }) => total + chance, 0);
  const decides = off.length && (off[0] === causes[0] || isGrave(step) || share >= STRICTER_SHARE);
  return decides ? checkRequest.texts.faults.get(off[0].fault).now : "";
}

/** @param {CheckRequest} checkRequest @param {Result} step */
function actionsOf(checkRequest, step) {
  const leading = leadingFault(checkRequest, step);
  const text = checkRequest.texts.faults.get(leading.id);
  const grave = isGrave(step);
  const { band } = step.verdict;
  const results = grave ? [] : [...checkRequest.pack.tasks.values()].map((task) => resultOf(checkRequest, task));
  /** @type {{kind: string, text?: string}[]} */
  const checks = step.tasks.length ? [{ kind: "checks" }] : [];
  const use = grave || leaveOffText(checkRequest, step) ? [] : [textAction(text.now)];
  const actions = [...results.map(textAction), ...(band === "self-check" ? [...checks, ...use] : [...use, ...checks])];
  if (band === "qualified" || band === "make-safe") actions.push(...bookingActions(checkRequest, leading.performedBy));
  else if (leading.performedBy === HOUSEHOLDER) actions.push(textAction(text.job));
  return actions;
}

/** @param {string} text */
function textAction(text) {
  return { kind: "text", text };
}

/** Nobody books the householder: where a caution makes a harmless cause a skilled person's, a technician comes.
 * @param {CheckRequest} checkRequest @param {string} who */
function bookingActions(checkRequest, who) {
  return [
    { kind: "claim", text: checkRequest.region.claim_first },
    { kind: "book", text: personLabel(checkRequest, who === HOUSEHOLDER ? "technician" : who) },
  ];
}

/** @param {CheckRequest} checkRequest @param {string[]} faults */
function namesOf(checkRequest, faults) {
  return faults.map((fault) => checkRequest.texts.faults.get(fault).name);
}

/** @param {CheckRequest} checkRequest @param {{verdict: Verdict}} step */
function leadingFault(checkRequest, { verdict }) {
  return checkRequest.pack.faults.get(verdict.causes[0].fault);
}

/** @param {CheckRequest} checkRequest @param {Task} task */
function taskLink(checkRequest, task) {
  /** @type {Object<string, string>} */
  const states = { fixed: "fixed", "not-fixed": "no-change" };
  const answer = checkRequest.answers.get(task.outcome);
  return {
    title: checkRequest.texts.tasks.get(task.id).title,
    minutes: roundHalfEven(task.minutes),
    href: checkRequest.links.task(task.id),
    done: answer === undefined ? "" : (states[answer] ?? "done"),
  };
}

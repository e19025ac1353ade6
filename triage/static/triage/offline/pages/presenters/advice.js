/* The advice: how serious it is, what to do now, what it probably is, and who does the rest. As
   `triage/check_pages/presenters/advice.py`. */

import { roundHalfEven } from "../rounding.js";
import { DID, answersSoFar } from "./answers.js";
import { causesOf } from "./causes.js";
import { noteOf } from "./flags.js";
import { callsFor } from "./numbers.js";
import { priceLines } from "./prices.js";
import { problemSentences } from "./problems.js";
import { HOUSEHOLDER, aPerson, localRules, readyForThem, skilledJobs } from "./skilled.js";
import { shortSummary } from "./summary.js";
import { resultOf } from "./task.js";

const LEAVE_OFF = "leave-off";
const STRICTER_SHARE = 0.25;
const LIKELY = 0.35;
export const NETWORK = "network-operator";

export function advicePage(visit, step) {
  const leading = leadingFault(visit, step);
  const common = {
    band: step.verdict.band,
    cautions: step.cautions.map((flag) => noteOf(visit, flag, false)),
    local_line: localRules(visit, step),
    call: callsFor(visit, leading.performedBy === NETWORK ? ["network"] : []),
    part: visit.texts.faults.get(leading.id).picture,
    answers: answersSoFar(visit),
    problems: problemSentences(visit),
  };
  return { ...common, ...(isSolved(visit, step) ? solvedAdvice(visit) : openAdvice(visit, step)) };
}

/* Whether a task put it right; never while a caution or a grave band stands. */
export function isSolved(visit, { cautions, verdict }) {
  const fixed = [...visit.reading.answers].some(([o, answer]) => o.startsWith(DID) && answer === "fixed");
  return fixed && !cautions.length && ["normal", "self-check"].includes(verdict.band);
}

function solvedAdvice(visit) {
  const cured = [...visit.pack.tasks.values()].filter(({ id }) => visit.reading.answers.get(DID + id) === "fixed");
  return {
    solved: true,
    heading: visit.say("That put it right"),
    meaning: cured.map((task) => resultOf(visit, task)).join(" "),
  };
}

function openAdvice(visit, step) {
  const jobs = skilledJobs(visit, step);
  const priced = step.verdict.band !== "normal";
  return {
    solved: false,
    heading: adviceHeading(visit, step),
    meaning: likeliestCause(visit, step),
    leave_off: keepOff(visit, step),
    first: whatNow(visit, step),
    causes: causesOf(visit, step.verdict),
    cannot_tell: lookAlikes(visit, step),
    also_check: alsoCheck(visit, step),
    tasks: step.tasks.map((task) => taskLink(visit, task)),
    skilled: jobs,
    ready: jobs.length ? readyForThem(visit) : [],
    cost_lines: priced ? priceLines(visit) : [],
    costs_href: priced ? visit.links.costs() : "",
    tell: shortSummary(visit),
  };
}

function adviceHeading(visit, step) {
  switch (step.verdict.band) {
    case "make-safe":
      return visit.say("Leave it off until it has been checked");
    case "qualified":
      return visit.say("This is a job for %(person)s", {
        person: aPerson(visit, leadingFault(visit, step).performedBy),
      });
    case "self-check":
      return visit.say("You may be able to put this right");
    default:
      return visit.say("It seems to work as it should");
  }
}

/* The likeliest cause in one sentence, as sure as it is and no surer. */
function likeliestCause(visit, { verdict }) {
  const [first] = verdict.causes;
  const words = { cause: visit.texts.faults.get(first.fault).name };
  if (first.chance >= LIKELY) return visit.say("Most likely: %(cause)s.", words);
  return visit.say("Your answers fit more than one cause. The likeliest is: %(cause)s.", words);
}

/* Whether nothing on the page may let the oven be used: the band says so, or a caution was raised. */
function isGrave(step) {
  return step.verdict.band === "make-safe" || step.cautions.length > 0;
}

/* The sentence that keeps the oven off, or nothing where it may be used in some way. */
function keepOff(visit, step) {
  const { causes } = step.verdict;
  const off = causes.filter(({ fault }) => visit.pack.faults.get(fault).interimUse === LEAVE_OFF);
  const share = off.reduce((total, { chance }) => total + chance, 0);
  if (off.length && (off[0] === causes[0] || isGrave(step) || share >= STRICTER_SHARE)) {
    return visit.texts.faults.get(off[0].fault).now;
  }
  return isGrave(step) ? visit.say("Leave the oven off until it has been checked.") : "";
}

function whatNow(visit, step) {
  const leading = leadingFault(visit, step);
  const text = visit.texts.faults.get(leading.id);
  const results = isGrave(step) ? [] : [...visit.pack.tasks.values()].map((task) => resultOf(visit, task));
  const checks = step.tasks.length
    ? [visit.say("Do the checks below, if you like. Each one first asks if it is safe to start.")]
    : [];
  const use = keepOff(visit, step) ? [] : [text.now];
  const { band } = step.verdict;
  const lines = [...results, ...(band === "self-check" ? [...checks, ...use] : [...use, ...checks])];
  if (band === "qualified" || band === "make-safe") lines.push(...booking(visit, leading.performedBy));
  else if (leading.performedBy === HOUSEHOLDER) lines.push(text.job);
  return lines.filter(Boolean);
}

/* Nobody books the householder: where a caution makes a screenedLikelihood cause a skilled person's, a technician comes. */
function booking(visit, who) {
  const person = aPerson(visit, who === HOUSEHOLDER ? "technician" : who);
  const book = visit.say("Book %(person)s.", { person });
  return [
    visit.say("Before you pay for a repair: %(claim)s", { claim: visit.place.claim_first }),
    `${book} ${visit.say("Read out or send the summary below.")}`,
  ];
}

function lookAlikes(visit, { verdict }) {
  if (verdict.alike.length < 2) return "";
  const words = { names: namesOf(visit, verdict.alike), split: visit.texts.families.get(verdict.family).split };
  return visit.say("These cannot be told apart without opening the oven: %(names)s. %(split)s", words);
}

function alsoCheck(visit, { verdict }) {
  if (!verdict.alsoCheck.length) return "";
  const words = { names: namesOf(visit, verdict.alsoCheck) };
  return visit.say("Worth a look at the same visit, as one often leads to the other: %(names)s.", words);
}

function namesOf(visit, faults) {
  return faults.map((fault) => visit.texts.faults.get(fault).name).join("; ");
}

function taskLink(visit, task) {
  const states = { fixed: "fixed", "not-fixed": "no-change" };
  const answer = visit.reading.answers.get(task.outcome);
  return {
    title: visit.texts.tasks.get(task.id).title,
    minutes: roundHalfEven(task.minutes),
    href: visit.links.task(task.id),
    done: answer === undefined ? "" : Object.hasOwn(states, answer) ? states[answer] : "done",
  };
}

function leadingFault(visit, { verdict }) {
  return visit.pack.faults.get(verdict.causes[0].fault);
}

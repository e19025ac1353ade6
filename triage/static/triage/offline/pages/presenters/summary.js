/* What to tell whoever comes, as plain text: as `triage/check_pages/presenters/summary.py`,
   `triage/jobsheet/summary.py` and `triage/jobsheet/formats/text.py`. What to bring and what to measure, which only a
   repairer needs and which takes much to know, is left to the site: its file at the same address has both. */

import { CANT_TELL, NONE_OF_THESE, OPENING, SCREEN } from "../../engine/pack.js";
import { signedTenths } from "../rounding.js";
import { ISOLATE, lowerFirst } from "../wording.js";
import { DID, answerWords, questionWords } from "./answers.js";
import { shortChance } from "./causes.js";
import { OFF_AT_THE_SUPPLY } from "./supply.js";

/** The short form, for the page. */
export function shortSummary(checkRequest) {
  const { verdict } = checkRequest.step;
  const told = answersTold(checkRequest);
  return joinedParts([
    summaryHead(checkRequest, checkRequest.step),
    section(checkRequest.say("KIND OF OVEN"), told.oven),
    section(checkRequest.say("WHAT WAS SEEN"), [...told.plain, ...told.readings, ...told.tried]),
    section(checkRequest.say("LIKELY CAUSES, of ovens that answer like this"), causeLines(checkRequest, verdict)),
    summaryFoot(checkRequest),
  ]);
}

/** The whole of it, for the file; what is known so far where the questions are not over. */
export function summaryText(checkRequest) {
  const { step } = checkRequest;
  const isOver = step.kind === "result" || step.kind === "emergency";
  return `${isOver ? longSummary(checkRequest, step) : answersOnly(checkRequest)}\n`;
}

function answersOnly(checkRequest) {
  const told = answersTold(checkRequest);
  const lines = [
    checkRequest.say("What is wrong: %(complaint)s", { complaint: troubleWords(checkRequest) }),
    ...[...told.oven, ...told.plain, ...told.readings, ...told.tried],
  ];
  const title = checkRequest.say("OVEN FAULT CHECK");
  return [title, section(checkRequest.say("ANSWERS SO FAR"), lines), summaryFoot(checkRequest)].join("\n\n");
}

function longSummary(checkRequest, step) {
  const { verdict } = step;
  const weights = new Map(verdict.causes[0].weights.map(({ observation, decibans }) => [observation, decibans]));
  const told = answersTold(checkRequest, weights);
  const names = verdict.alsoCheck.map((fault) => checkRequest.texts.faults.get(fault).name);
  return joinedParts([
    summaryHead(checkRequest, step),
    section(checkRequest.say("KIND OF OVEN"), told.oven),
    section(checkRequest.say("ANSWERS (weight for the likeliest cause, in decibans: above zero points to it)"), [
      ...told.plain,
      ...told.readings,
      ...told.tried,
    ]),
    section(checkRequest.say("LIKELY CAUSES, of ovens that answer like this"), causeLines(checkRequest, verdict)),
    section(checkRequest.say("ALSO CHECK"), names),
    section(checkRequest.say("TOLD TO DO FIRST"), toldFirst(checkRequest, flagsOfStep(step))),
    checkRequest.say("What to bring and what to measure: open the address below when you’re online."),
    summaryFoot(checkRequest),
  ]);
}

function joinedParts(parts) {
  return parts.filter(Boolean).join("\n\n");
}

function section(heading, lines) {
  return lines.length ? [heading, ...lines.map((line) => `- ${line}`)].join("\n") : "";
}

function flagsOfStep(step) {
  return step.kind === "emergency" ? step.flags : step.cautions;
}

function summaryHead(checkRequest, step) {
  const flags = flagsOfStep(step);
  const screened = checkRequest.answers.get(SCREEN) === NONE_OF_THESE;
  const headings = flags.map(({ id }) => checkRequest.texts.flags.get(id).heading);
  const unseen = screened ? checkRequest.say("Danger signs: none seen") : checkRequest.say("Danger signs: not asked");
  const leaveOff = checkRequest.say("Advice given: leave it off until it has been checked");
  return [
    checkRequest.say("OVEN FAULT CHECK"),
    checkRequest.say("Trouble: %(complaint)s", { complaint: troubleWords(checkRequest) }),
    ...headings.map((sign) => checkRequest.say("Danger sign: %(sign)s", { sign })),
    ...(flags.length ? [] : [unseen]),
    ...(step.verdict.band === "make-safe" ? [leaveOff] : []),
    checkRequest.say("Supply: %(state)s", { state: lowerFirst(supplySaid(checkRequest)) }),
  ].join("\n");
}

/* The line of the first page that fits best, else the name of the complaint. */
function troubleWords(checkRequest) {
  const { answers } = checkRequest;
  let best = null;
  checkRequest.pack.complaints.forEach((complaint, at) => {
    const fits =
      complaint.option === answers.get(OPENING) && [...complaint.answers].every(([o, told]) => answers.get(o) === told);
    const { size } = complaint.answers;
    if (fits && (!best || size > best.size)) best = { size, words: checkRequest.texts.start.entries[at].words };
  });
  if (best) return best.words;
  return answers.has(OPENING) ? answerWords(checkRequest, OPENING, answers.get(OPENING)) : checkRequest.say("not said");
}

function supplySaid(checkRequest) {
  const answer = checkRequest.answers.get(OFF_AT_THE_SUPPLY);
  if (answer === "yes") return checkRequest.say("Said to be off. Not proved dead.");
  return answer === "no" ? checkRequest.say("Said not to be off.") : checkRequest.say("Not said to be off.");
}

/* Every answer that holds, as lines by where they stand; with `weights`, each with what it weighs. */
function answersTold(checkRequest, weights = new Map()) {
  const told = { oven: [], plain: [], readings: [], tried: [] };
  for (const [observation, answer] of checkRequest.answers) {
    const line = `${questionWords(checkRequest, observation)}: ${answerWords(checkRequest, observation, answer)}`;
    const weighed = weights.has(observation) ? `${line} (${signedTenths(weights.get(observation))})` : line;
    if (checkRequest.pack.variants.has(observation)) told.oven.push(line);
    if (observation.startsWith(DID)) told.tried.push(weighed);
    else if (isTrialOrNumbers(checkRequest, observation, answer)) told.readings.push(weighed);
    else if (![SCREEN, OPENING].includes(observation) && !checkRequest.pack.variants.has(observation)) {
      told.plain.push(weighed);
    }
  }
  return told;
}

/* Whether it was measured or tried out rather than seen or remembered. */
function isTrialOrNumbers(checkRequest, observation, answer) {
  const known = checkRequest.pack.observations.get(observation);
  if (!known) return false;
  return known.method === "trial" || ![...known.options, CANT_TELL].includes(answer);
}

function causeLines(checkRequest, { causes }) {
  return causes.map(({ fault, chance }) => {
    const { name, trade } = checkRequest.texts.faults.get(fault);
    return `${shortChance(checkRequest, chance)}: ${name} (${trade})`;
  });
}

/* Where one flag forbids every switch, the pages show what that one says and no other's advice. */
function toldFirst(checkRequest, flags) {
  const untouchable = flags.some(({ switches }) => switches === "never");
  const shown = flags.filter(({ switches }) => switches === "never" || !untouchable);
  return shown.flatMap(({ id }) => checkRequest.texts.flags.get(id).first).filter((line) => line !== ISOLATE);
}

function summaryFoot(checkRequest) {
  const version = { pack: checkRequest.pack.version, place: checkRequest.region.name };
  return [
    checkRequest.say("Knowledge: %(pack)s, %(place)s. Local rules and licensed practice come first.", version),
    checkRequest.say("This check again: %(address)s", { address: checkRequest.origin + checkRequest.links.step() }),
  ].join("\n");
}

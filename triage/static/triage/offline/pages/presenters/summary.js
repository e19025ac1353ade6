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
export function shortSummary(visit) {
  const { verdict } = visit.step;
  const told = answersTold(visit);
  return joinedParts([
    summaryHead(visit, visit.step),
    section(visit.say("KIND OF OVEN"), told.oven),
    section(visit.say("WHAT WAS SEEN"), [...told.plain, ...told.readings, ...told.tried]),
    section(visit.say("LIKELY CAUSES, of ovens that answer like this"), causeLines(visit, verdict)),
    summaryFoot(visit),
  ]);
}

/** The whole of it, for the file; what is known so far where the questions are not over. */
export function summaryText(visit) {
  const { step } = visit;
  const isOver = step.kind === "advice" || step.kind === "make-safe";
  return `${isOver ? longSummary(visit, step) : answersOnly(visit)}\n`;
}

function answersOnly(visit) {
  const told = answersTold(visit);
  const lines = [
    visit.say("What is wrong: %(complaint)s", { complaint: troubleWords(visit) }),
    ...[...told.oven, ...told.plain, ...told.readings, ...told.tried],
  ];
  const title = visit.say("OVEN FAULT CHECK");
  return [title, section(visit.say("ANSWERS SO FAR"), lines), summaryFoot(visit)].join("\n\n");
}

function longSummary(visit, step) {
  const { verdict } = step;
  const weights = new Map(verdict.causes[0].weights.map(({ observation, decibans }) => [observation, decibans]));
  const told = answersTold(visit, weights);
  const names = verdict.alsoCheck.map((fault) => visit.texts.faults.get(fault).name);
  return joinedParts([
    summaryHead(visit, step),
    section(visit.say("KIND OF OVEN"), told.oven),
    section(visit.say("ANSWERS (weight for the likeliest cause, in decibans: above zero points to it)"), [
      ...told.plain,
      ...told.readings,
      ...told.tried,
    ]),
    section(visit.say("LIKELY CAUSES, of ovens that answer like this"), causeLines(visit, verdict)),
    section(visit.say("ALSO CHECK"), names),
    section(visit.say("TOLD TO DO FIRST"), toldFirst(visit, flagsOfStep(step))),
    visit.say("What to bring and what to measure: open the address below when you’re online."),
    summaryFoot(visit),
  ]);
}

function joinedParts(parts) {
  return parts.filter(Boolean).join("\n\n");
}

function section(heading, lines) {
  return lines.length ? [heading, ...lines.map((line) => `- ${line}`)].join("\n") : "";
}

function flagsOfStep(step) {
  return step.kind === "make-safe" ? step.flags : step.cautions;
}

function summaryHead(visit, step) {
  const flags = flagsOfStep(step);
  const screened = visit.reading.answers.get(SCREEN) === NONE_OF_THESE;
  const headings = flags.map(({ id }) => visit.texts.flags.get(id).heading);
  const unseen = screened ? visit.say("Danger signs: none seen") : visit.say("Danger signs: not asked");
  const leaveOff = visit.say("Advice given: leave it off until it has been checked");
  return [
    visit.say("OVEN FAULT CHECK"),
    visit.say("Trouble: %(complaint)s", { complaint: troubleWords(visit) }),
    ...headings.map((sign) => visit.say("Danger sign: %(sign)s", { sign })),
    ...(flags.length ? [] : [unseen]),
    ...(step.verdict.band === "make-safe" ? [leaveOff] : []),
    visit.say("Supply: %(state)s", { state: lowerFirst(supplySaid(visit)) }),
  ].join("\n");
}

/* The line of the first page that fits best, else the name of the complaint. */
function troubleWords(visit) {
  const { answers } = visit.reading;
  let best = null;
  visit.pack.complaints.forEach((complaint, at) => {
    const fits =
      complaint.option === answers.get(OPENING) && [...complaint.answers].every(([o, told]) => answers.get(o) === told);
    const { size } = complaint.answers;
    if (fits && (!best || size > best.size)) best = { size, words: visit.texts.start.entries[at].words };
  });
  if (best) return best.words;
  return answers.has(OPENING) ? answerWords(visit, OPENING, answers.get(OPENING)) : visit.say("not said");
}

function supplySaid(visit) {
  const answer = visit.reading.answers.get(OFF_AT_THE_SUPPLY);
  if (answer === "yes") return visit.say("Said to be off. Not proved dead.");
  return answer === "no" ? visit.say("Said not to be off.") : visit.say("Not said to be off.");
}

/* Every answer that holds, as lines by where they stand; with `weights`, each with what it weighs. */
function answersTold(visit, weights = new Map()) {
  const told = { oven: [], plain: [], readings: [], tried: [] };
  for (const [observation, answer] of visit.reading.answers) {
    const line = `${questionWords(visit, observation)}: ${answerWords(visit, observation, answer)}`;
    const weighed = weights.has(observation) ? `${line} (${signedTenths(weights.get(observation))})` : line;
    if (visit.pack.variants.has(observation)) told.oven.push(line);
    if (observation.startsWith(DID)) told.tried.push(weighed);
    else if (isTrialOrNumbers(visit, observation, answer)) told.readings.push(weighed);
    else if (![SCREEN, OPENING].includes(observation) && !visit.pack.variants.has(observation)) {
      told.plain.push(weighed);
    }
  }
  return told;
}

/* Whether it was measured or tried out rather than seen or remembered. */
function isTrialOrNumbers(visit, observation, answer) {
  const known = visit.pack.observations.get(observation);
  if (!known) return false;
  return known.method === "trial" || ![...known.options, CANT_TELL].includes(answer);
}

function causeLines(visit, { causes }) {
  return causes.map(({ fault, chance }) => {
    const { name, trade } = visit.texts.faults.get(fault);
    return `${shortChance(visit, chance)}: ${name} (${trade})`;
  });
}

/* Where one flag forbids every switch, the pages show what that one says and no other's advice. */
function toldFirst(visit, flags) {
  const untouchable = flags.some(({ switches }) => switches === "never");
  const shown = flags.filter(({ switches }) => switches === "never" || !untouchable);
  return shown.flatMap(({ id }) => visit.texts.flags.get(id).first).filter((line) => line !== ISOLATE);
}

function summaryFoot(visit) {
  const version = { pack: visit.pack.version, place: visit.place.name };
  return [
    visit.say("Knowledge: %(pack)s, %(place)s. Local rules and licensed practice come first.", version),
    visit.say("This check again: %(address)s", { address: visit.origin + visit.links.step() }),
  ].join("\n");
}

/* The form of a reading and, once it was sent, what comes of it: the same on a task's page and on a page of its own. As
   `triage/check_pages/presenters/readings/form.py`. */

import { raisedBy } from "../../../engine/readings/evidence.js";
import { Unreadable } from "../../../engine/readings/written.js";
import { applies, ruledOut } from "../../../engine/trail.js";
import { capital } from "../../wording.js";
import { readingText } from "../reading_text.js";
import { doorPlaces } from "./gasket.js";
import { READING_KINDS, formIntros } from "./kinds.js";
import { reasonSentence } from "./reasons.js";
import { meaningOf } from "./told.js";
import { READ, SENT, Typed } from "./typed.js";

const FOR = "for";
/* Where a list of readings is typed in rows, the field of its first one. */
const FIRST_OF = { readings: "time-1", temperature: "shown-1" };

/** What the figures of a task can answer; nothing where its outcome is not a reading. */
export function measuredBy(pack, task) {
  const first = pack.observations.get(task.outcome);
  if (!first?.gauge) return [];
  const others = [...task.also].map((name) => pack.observations.get(name));
  return [first, ...others].filter(({ gauge }) => gauge?.kind === first.gauge.kind);
}

/** The form for figures that answer `observations`, the first of them always; `action` is the page it stands on. */
export function readingForm(visit, observations, action) {
  const name = observations[0].gauge.kind;
  const kind = READING_KINDS.get(name);
  const typed = new Typed(visit);
  kind.read(visit, typed);
  const meant = meantOf(visit, observations, typed);
  return {
    kind: name,
    heading: visit.say("Put the figures in"),
    intro: formIntros(visit)[name],
    action,
    kept: [["region", visit.links.region], ...visit.reading.answers, [SENT, "1"]],
    groups: [...whichMeasured(visit, observations, meant), ...kind.groups(visit, typed)],
    places: name === "gasket" ? doorPlaces(visit, typed) : [],
    ...(typed.sent ? readingOutcome(visit, kind, typed, meant, observations) : {}),
  };
}

/* What is wrong or missing, or else the result. */
function readingOutcome(visit, kind, typed, meant, observations) {
  const fields = kind.groups(visit, typed).flatMap((group) => group.fields);
  const labels = new Map(fields.map(({ name, label }) => [name, label]));
  if (typed.problems.size) {
    return { wanting: [...typed.problems].map(([name, problem]) => `${labels.get(READ + name) ?? name}: ${problem}`) };
  }
  const text = kind.write(visit, typed);
  if (!text) return { wanting: [visit.say("Nothing is filled in yet.")] };
  try {
    return { result: readingResult(visit, kind, text, meant, observations) };
  } catch (fault) {
    if (!(fault instanceof Unreadable)) throw fault;
    const { field, reason } = fault;
    const label = labels.get(READ + field) || labels.get(READ + (FIRST_OF[field] ?? field)) || visit.say("the figures");
    return { wanting: [reasonSentence(visit, reason, { label, typed: "", low: "", high: "" })] };
  }
}

/* A red flag is raised by whatever the figures can answer, whether or not it was asked for on this oven. */
function readingResult(visit, kind, text, meant, observations) {
  const { drawing, lines } = kind.told(visit, text);
  const { gauge } = meant[0];
  const headline = readingText(visit, text, gauge);
  const isAsked = (one) => meant.includes(one) || one.gauge.quantity !== gauge.quantity;
  const alarming = observations.filter((one) => isAsked(one) && raisedBy(one, text).length);
  const answering = [...new Set([...meant, ...alarming])].filter(
    (one) => alarming.includes(one) || isFitting(visit, one),
  );
  const answers = answering.map(({ id }) => [id, text]);
  const onward = alarming.length ? visit.links.step(answers) : visit.links.onward(answers);
  const sureness = visit.say("± is a range that holds the true value about 19 times in 20.");
  return {
    headline: capital(headline),
    lines: [
      ...meant.map((one) => meaningOf(visit, one, text)),
      ...lines,
      ...(headline.includes("±") ? [sureness] : []),
    ],
    drawing,
    use: answers.length ? { label: visit.say("Use this in the check"), href: onward } : null,
    alarm: alarming.length > 0,
  };
}

/* The one that was measured, and those that other quantities of the same figures answer as well. */
function meantOf(visit, observations, typed) {
  const alike = alternativesOf(visit, observations);
  const chosen = alike.find(({ id }) => id === typed.text(FOR)) ?? alike[0];
  const others = observations.filter(({ gauge }) => gauge.quantity !== chosen.gauge.quantity);
  return [chosen, ...others.filter((one) => isFitting(visit, one))];
}

function alternativesOf(visit, [first, ...others]) {
  const same = others.filter(({ gauge }) => gauge.quantity === first.gauge.quantity);
  return [first, ...same.filter((one) => isFitting(visit, one))];
}

/* The question which of several was measured, where there is more than one. */
function whichMeasured(visit, observations, meant) {
  const alike = alternativesOf(visit, observations);
  if (alike.length < 2) return [];
  const choices = alike.map(({ id }) => [id, visit.texts.questions.get(id).short]);
  const field = { name: READ + FOR, label: visit.say("What was measured"), value: meant[0].id, choices };
  return [{ fields: [field] }];
}

/* Whether it exists on this oven after these answers. */
function isFitting(visit, observation) {
  const { answers } = visit.reading;
  return applies(observation, answers) && !ruledOut(observation.needs, answers);
}

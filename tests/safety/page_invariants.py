"""What must hold of every page an ordinary person is shown, one function per rule, violations as sentences.

Each takes a `Shown`: the page as a tree, with the place, the trail and the step it was made from. Whether a task may be
open is worked out from the step and from the answers about its gates, not from what the page was given.
"""

import re
from dataclasses import dataclass
from functools import cache, cached_property

from tests.reading_pages import Element
from tests.safety.invariants import flags_answered
from triage.engine import Band, Emergency, Question, Result
from triage.knowledge.library import library
from triage.knowledge.region_builder import RegionProfile

CHECK = "/check/"
PERMITS_USE = re.compile(r"\byou (can|may) (still )?(use|cook)\b|^use it\b", re.IGNORECASE)
A_PERSON = ("technician", "electrician", "network")


@dataclass(frozen=True)
class Shown:
    """One page. `pairs` are the answers in its address, `step` what they come to, `task` the task it is about."""

    region: RegionProfile
    path: str
    pairs: tuple
    step: object
    page: Element
    task: str = ""

    @property
    def texts(self):
        return library().texts_for(self.region.id)

    @property
    def shows_danger(self):
        return self.path == CHECK and isinstance(self.step, Emergency)

    @property
    def shows_advice(self):
        return self.path == CHECK and isinstance(self.step, Result)

    @cached_property
    def words(self):
        """All the page says."""
        return self.page.text

    @cached_property
    def elements(self):
        """Everything on the page in its order."""
        return list(self.page.all())

    @cached_property
    def lines(self):
        """The text of every item of a list."""
        return {element.text for element in self.elements if element.tag == "li"}

    def classed(self, tag, name):
        """The elements with this tag and class."""
        return [e for e in self.elements if e.tag == tag and name in e.attributes.get("class", "").split()]


def danger_is_acted_on_first(shown):
    """1: the first action is the gravest flag's; the heading is its own, or that of a flag that forbids all switches;
    and no emergency goes unnamed."""
    if not shown.shows_danger:
        return []
    flags = flags_answered(library().pack, shown.pairs)
    heads = [flags[0], *(flag for flag in flags if flag.switches == "never")]
    heading, first = (
        next(e.text for e in shown.elements if e.tag == "h1"),
        next(e.text for e in shown.classed("ol", "steps")[0].all() if e.tag == "li"),
    )
    wrong = []
    if heading not in [shown.texts.flags[flag.id].heading for flag in heads]:
        wrong.append(f"{flags[0].id} is the gravest, and the heading is {heading!r}.")
    if not first.startswith(shown.texts.flags[flags[0].id].first[0]):
        wrong.append(f"The first action is not that of {flags[0].id} but {first!r}.")
    for flag in (flag for flag in flags if flag.level.value == "emergency"):
        told = shown.texts.flags[flag.id]
        if not any(words in shown.words for words in (told.heading, told.sign)):
            wrong.append(f"Nothing on the page speaks of {flag.id}.")
    return wrong


def nothing_to_try_after_danger(shown):
    """1: after a red flag no link leads to a task, and what is asked is asked from memory."""
    if not shown.shows_danger:
        return []
    known = {name for name, _ in shown.pairs} | {"region", "danger", shown.step.follow_up_question}
    wrong = []
    for link in (element for element in shown.elements if element.tag == "a"):
        address = link.attributes["href"]
        new = set(re.findall(r"[?&]([\w-]+)=", address)) - known
        if "/task/" in address or "/reading/" in address or (new and address.startswith(CHECK)):
            wrong.append(f"After a red flag a link leads to {address}.")
    return wrong


def no_skilled_work_is_shown(shown):
    """2: nothing of what a repairer measures and does, and no step of a task that is not an ordinary person's."""
    words, lines = shown.words, shown.lines
    wrong = [
        f"What a repairer does about {name} is shown." for name, told in skilled_words(shown.region.id) if told in words
    ]
    wrong += [
        f"A step of {task.id} is shown; it is for a person who is {task.competence}."
        for task in library().pack.tasks.values()
        if task.competence != "ordinary" and lines & set(shown.texts.tasks[task.id].steps)
    ]
    return wrong


@cache
def skilled_words(region):
    """What each fault says to the repairer, whole and by the sentence."""
    found = []
    for name, text in library().texts_for(region).faults.items():
        whole = " ".join(text.repairer.split())
        found += [(name, part) for part in (whole, *re.split(r"(?<=[.;]) ", whole)) if len(part) > 24]
    return found


def steps_wait_for_gates(shown):
    """3: a task's steps show where it is offered and every gate was answered yes, and nowhere else."""
    tasks, lines, answers = library().pack.tasks, shown.lines, dict(shown.pairs)
    steps = {name: lines & set(text.steps) for name, text in shown.texts.tasks.items()}
    wrong = [
        f"Steps of {name} stand on another page." for name, told in steps.items() if told - steps.get(shown.task, set())
    ]
    if not shown.task:
        return wrong
    task, told = tasks[shown.task], steps[shown.task]
    beside = (
        isinstance(shown.step, Question) and shown.step.better_test is not None and shown.step.better_test.id == task.id
    )
    offered = beside or (isinstance(shown.step, Result) and task in shown.step.tasks)
    shut = [gate.value for gate in task.gates if answers.get(gate) != "yes"]
    if told and not offered:
        wrong.append(f"The steps of {task.id} are shown; it is not offered for these answers.")
    if told and shut:
        wrong.append(f"The steps of {task.id} are shown before {shut} was answered yes.")
    if offered and not shut and not told:
        wrong.append(f"{task.id} is offered and its gates are open, and its steps are not shown.")
    return wrong


def cautions_stand_before_steps(shown):
    """3: each caution of an open task stands whole before its first step."""
    if not shown.task:
        return []
    text, order = shown.texts.tasks[shown.task], shown.elements
    steps = [i for i, element in enumerate(order) if element.tag == "li" and element.text in text.steps]
    if not steps:
        return []
    before = " ".join(
        element.text for element in order[: steps[0]] if "signal" in element.attributes.get("class", "").split()
    )
    return [
        f"{shown.task}: {part!r} does not stand before the first step."
        for caution in text.cautions
        for part in (caution.signal, caution.hazard, caution.consequence, caution.avoid)
        if part not in before
    ]


def nothing_grave_may_be_used(shown):
    """4: where the band is make-safe or a caution was raised, no sentence lets the oven be used meanwhile."""
    if not shown.shows_advice or not (shown.step.cautions or shown.step.verdict.band is Band.MAKE_SAFE):
        return []
    told = [element.text for element in shown.elements if element.tag in ("li", "p", "strong")]
    return [f"The oven is to be left off, and the page says {line!r}." for line in told if PERMITS_USE.search(line)]


def the_way_out_is_there(shown):
    """6: the way to the danger signs, the region's emergency number to press, and a person to turn to."""
    links = {
        link.attributes["href"]: link.text
        for way_out in shown.classed("nav", "way-out")
        for link in way_out.all()
        if link.tag == "a"
    }
    wrong = [] if any(address.startswith("/danger/") for address in links) else ["There is no way to the danger signs."]
    digits = re.sub(r"[^\d+]", "", shown.region.emergency)
    if shown.region.emergency not in links.get(f"tel:{digits}", ""):
        wrong.append(f"The emergency number {shown.region.emergency} cannot be pressed.")
    persons = ["person", *(shown.region.terms[name] for name in A_PERSON)]
    if not any(person.lower() in shown.words.lower() for person in persons):
        wrong.append("Nobody to turn to is named.")
    return wrong


def local_rules_come_first(shown):
    """7: every advice page has the region's line on local rules, and so has a red flag's unless people must leave."""
    leave = shown.shows_danger and any(
        flag.switches == "never" and flag.level.value == "emergency" for flag in shown.step.flags
    )
    if not (shown.shows_advice or shown.shows_danger) or leave:
        return []
    return [] if shown.region.local_line in shown.words else ["The line on local rules is missing."]


def readings_stand_behind_danger_and_cautions(shown):
    """3: a reading on a page of its own opens after the danger signs, with each of its cautions above the form; never
    with a red flag, never before its gates, and never with how to heat an oven that nobody asked about."""
    forms = [element for element in shown.elements if "data-reading" in element.attributes]
    if not shown.path.startswith("/reading/") or not forms:
        return []
    pack, answers, order = library().pack, dict(shown.pairs), shown.elements
    kind = shown.path.strip("/").partition("/")[2]
    tasks = [t for t in pack.tasks.values() if (o := pack.observations.get(t.outcome)) and o.measurement]
    task = next(t for t in tasks if pack.observations[t.outcome].measurement.kind == kind)
    wrong = []
    if answers.get("danger") != "none":
        wrong.append("The form is there before the danger signs were looked through.")
    if flags := flags_answered(pack, shown.pairs):
        wrong.append(f"The form is there after {flags[0].id}.")
    if shut := [gate.value for gate in task.gates if answers.get(gate) != "yes"]:
        wrong.append(f"The form is there before {shut} was answered yes.")
    above = " ".join(
        element.text for element in order[: order.index(forms[0])] if "signal" in element.attributes.get("class", "")
    )
    wrong += [
        f"{c.hazard!r} is not above the form." for c in shown.texts.tasks[task.id].cautions if c.hazard not in above
    ]
    if task.needs_heat and shown.texts.questions[task.outcome].look in shown.words:
        wrong.append("The page says how to take a reading that heats the oven.")
    return wrong


PAGE_RULES = (
    danger_is_acted_on_first,
    nothing_to_try_after_danger,
    no_skilled_work_is_shown,
    steps_wait_for_gates,
    cautions_stand_before_steps,
    readings_stand_behind_danger_and_cautions,
    nothing_grave_may_be_used,
    the_way_out_is_there,
    local_rules_come_first,
)


def broken_page_rules(shown):
    return [sentence for rule in PAGE_RULES for sentence in rule(shown)]

"""Observations, and the questions about variants, gates and tasks that are observations too."""

from collections.abc import Iterable, Mapping

from triage.engine.enums import Method, SafetyGate
from triage.engine.frequency import FREQUENCIES, NEVER, FrequencyTable, distribution, in_order
from triage.engine.pack import SCREEN, Condition, Observation, Variant
from triage.knowledge.build_conditions import read_frequencies, refuse_cant_tell
from triage.knowledge.build_measurements import read_measurement, refuse_hanging_on_readings
from triage.knowledge.entry import Entry, entries
from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import LocatedDict, LocatedList

ANSWERS = "answer_frequencies"
HARD_SIGN = 0.001
GATE_ANSWERS = ("yes", "no", "unsure")
TASK_ANSWERS = ("fixed", "not-fixed")


def build_observations(
    file: str,
    fields: LocatedDict,
    conditions: Mapping[str, Condition],
    variants: Mapping[str, Variant],
    flags: Iterable[str],
    problems: list[PackProblem],
) -> dict[str, Observation]:
    """Every observation of the file; parents may stand anywhere in it."""
    known = listed_options(fields)
    variant_options = {variant.id: variant.options for variant in variants.values()}
    observations = {}
    for name, entry in entries(file, fields, problems):
        _refuse_taken(entry, name, ())
        options = _read_options(entry)
        reports = (entry.choice("reports", conditions) or None) if entry.has("reports") else None
        table = _read_table(entry, conditions[reports], options) if reports else None
        observations[name] = Observation(
            id=name,
            options=options,
            method=entry.member("method", Method),
            effort_seconds=entry.number("effort_seconds", 1, 7200),
            picture=entry.text("picture"),
            reports=reports,
            answer_probabilities=table.probabilities(conditions[reports].baseline) if table and reports else (),
            frequencies=table,
            requires_variant=entry.gate("requires_variant", variant_options),
            requires_answers=entry.gate("requires_answers", known),
            flags=_read_flags(entry, options, list(flags)),
            urgent=entry.flag("urgent", False),
            urgent_after=entry.gate("urgent_after", known),
            measurement=read_measurement(entry, options) if reports else None,
        )
        entry.close()
    refuse_hanging_on_readings(file, fields, observations, problems)
    return observations


def variant_questions(
    file: str,
    fields: LocatedDict,
    variants: Mapping[str, Variant],
    observations: Mapping[str, Observation],
    problems: list[PackProblem],
) -> dict[str, Observation]:
    """The questions about the kind of oven: answers are the variant's own options, taken at their word."""
    known = {observation.id: observation.options for observation in observations.values()}
    questions = {}
    for name, variant in variants.items():
        below = fields[name].get("question")
        if not isinstance(below, LocatedDict):  # not asked, or reported where the variants are read
            continue
        asked = Entry(file, f"{name}, question", below, problems)
        _refuse_taken(asked, name, observations)
        options = variant.options
        questions[name] = Observation(
            id=name,
            options=options,
            method=Method.LOOK,
            effort_seconds=asked.number("effort_seconds", 1, 7200),
            picture=asked.text("picture"),
            reports=name,
            answer_probabilities=tuple(tuple(float(a == b) for b in options) for a in options),
            requires_answers=asked.gate("requires_answers", known),
            urgent=asked.flag("urgent", False),
        )
        asked.close()
    return questions


def gate_questions() -> dict[str, Observation]:
    """ "Is it cold?" and "Is it off at the supply?": asked before a task that needs them, no evidence of anything."""
    return {gate.value: Observation(gate.value, GATE_ANSWERS, Method.LOOK, 30, "front") for gate in SafetyGate}


def task_outcome(task: str, condition: str, picture: str) -> Observation:
    """ "Did that fix it?" for one task, reporting the condition that stands for it."""
    by_level = ({"not-fixed": "almost-always"}, {"fixed": "usually", "not-fixed": "rarely"})
    rows = tuple(in_order(words, TASK_ANSWERS) for words in by_level)
    table = FrequencyTable(rows, trust=1.0)
    return Observation(
        id=f"did-{task}",
        options=TASK_ANSWERS,
        method=Method.TRIAL,
        effort_seconds=600,
        picture=picture,
        reports=condition,
        answer_probabilities=tuple(map(distribution, rows)),
        task=task,
        frequencies=table,
    )


def listed_options(fields: LocatedDict) -> dict[str, tuple[str, ...]]:
    """The options each observation of the file lists, as far as they can be read before it is built."""
    listed = {name: below.get("options") if isinstance(below, LocatedDict) else None for name, below in fields.items()}
    return {
        name: tuple(option for option in options if isinstance(option, str)) if isinstance(options, LocatedList) else ()
        for name, options in listed.items()
    }


def _read_options(entry: Entry) -> tuple[str, ...]:
    options = entry.ids("options")
    refuse_cant_tell(entry, "options", options)
    if isinstance(entry.fields.get("options"), LocatedList) and len(entry.fields["options"]) < 2:
        entry.report("options", "needs at least two options.", "List every answer there is.")
    return options


def _refuse_taken(entry: Entry, name: str, others: Iterable[str]) -> None:
    """A question may not take the name of the danger page, of a question before a task, or of one in `others`."""
    if name == SCREEN:
        entry.report("", "is the name of the danger page.", "Choose another id.")
    elif name in set(SafetyGate) or name in others:
        entry.report("", "is the name of another question.", "Choose another id.")


def _read_table(entry: Entry, condition: Condition, options: tuple[str, ...]) -> FrequencyTable | None:
    """What people answer for each level, in words; None where nothing can be read."""
    trust = entry.number("trust", 0.3, 1.0)
    floor = HARD_SIGN if entry.flag("hard_sign", False) else FREQUENCIES[NEVER]
    by_level = _read_answers(entry, condition, options)
    if not options:
        return None
    stated = [in_order(by_level[level], options) if level in by_level else None for level in condition.levels]
    usual = stated[max(range(len(stated)), key=lambda i: condition.baseline[i] if stated[i] else -1.0)]
    if usual is None:
        entry.report(ANSWERS, "has no row for any level.", "Say what people answer for each level.")
        return None
    return FrequencyTable(tuple(row or usual for row in stated), trust, floor)


def _read_answers(entry: Entry, condition: Condition, options: tuple[str, ...]) -> dict[str, dict[str, str]]:
    """Level to answer to frequency word."""
    if entry.fields.get(ANSWERS) == "as-named":
        entry.text(ANSWERS)
        for level in condition.levels:
            if level not in options:
                entry.report(ANSWERS, f"is as-named but no option is called {level!r}.", "Name it or write a table.")
        return {level: {level: "almost-always"} for level in condition.levels if level in options}
    return {
        level: read_frequencies(below, level, options)
        for level, below in entry.names(ANSWERS, required=True)
        if below.is_known(level, level, list(condition.levels))
    }


def _read_flags(entry: Entry, options: tuple[str, ...], flags: list[str]) -> dict[str, str]:
    return {
        option: below.choice(option, flags)
        for option, below in entry.names("flags")
        if below.is_known(option, option, list(options))
    }

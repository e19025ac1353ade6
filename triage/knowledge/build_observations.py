"""Observations, and the questions about variants, gates and tasks that are observations too."""

from collections.abc import Iterable, Mapping

from triage.engine.frequency import WORDS, spread
from triage.engine.pack import Condition, Observation, Variant
from triage.knowledge.build_conditions import read_words
from triage.knowledge.entry import Entry, entries
from triage.knowledge.problems import Problem
from triage.knowledge.yaml_reader import Mapped

HARD_SIGN = 0.001
WAYS = ("memory", "look", "trial")
GATES = ("cold", "supply-off", "plug-or-breaker-off", "oven-apart")
GATE_ANSWERS = ("yes", "no", "unsure")
TASK_ANSWERS = ("fixed", "not-fixed")


def build_observations(
    file: str,
    fields: Mapped,
    conditions: Mapping[str, Condition],
    variants: Mapping[str, Variant],
    flags: Iterable[str],
    problems: list[Problem],
) -> dict[str, Observation]:
    """Every observation of the file; parents may stand anywhere in it."""
    known = {name: _listed_options(fields[name]) for name in fields}
    variant_options = {variant.id: variant.options for variant in variants.values()}
    observations = {}
    for name, entry in entries(file, fields, problems):
        options = entry.ids("options")
        reports = entry.choice("reports", conditions) if entry.has("reports") else None
        says = _read_says(entry, conditions[reports], options) if reports else ()
        observations[name] = Observation(
            id=name,
            options=options,
            how=entry.choice("how", WAYS),
            effort=entry.number("effort", 1, 7200),
            picture=entry.text("picture"),
            reports=reports,
            says=says,
            needs=entry.gate("needs", variant_options),
            after=entry.gate("after", known),
            flags=_read_flags(entry, options, list(flags)),
            first=entry.flag("first", False),
        )
        entry.close()
    return observations


def variant_questions(
    file: str,
    fields: Mapped,
    variants: Mapping[str, Variant],
    observations: Iterable[str],
    problems: list[Problem],
) -> dict[str, Observation]:
    """The questions about the kind of oven: answers are the variant's own options, taken at their word."""
    known = set(observations)
    questions = {}
    for name, entry in entries(file, fields, []):
        if not entry.has("asked") or name not in variants:
            continue
        asked = Entry(file, f"{name}, asked", fields[name]["asked"], problems)
        options = variants[name].options
        questions[name] = Observation(
            id=name,
            options=options,
            how="look",
            effort=asked.number("effort", 1, 7200),
            picture=asked.text("picture"),
            reports=name,
            says=tuple(tuple(float(a == b) for b in options) for a in options),
            after={p: frozenset(after.ids(p)) for p, after in asked.names("after") if p in known},
            first=asked.flag("first", False),
        )
        asked.close()
    return questions


def gate_questions() -> dict[str, Observation]:
    """ "Is it cold?" and "Is it off at the supply?": asked before a task that needs them, no evidence of anything."""
    return {gate: Observation(gate, GATE_ANSWERS, "look", 30, "front") for gate in GATES}


def task_outcome(task: str, condition: str, picture: str) -> Observation:
    """ "Did that fix it?" for one task, reporting the condition that stands for it."""
    says = tuple(
        spread(words, TASK_ANSWERS)
        for words in ({"not-fixed": "almost-always"}, {"fixed": "usually", "not-fixed": "rarely"})
    )
    return Observation(f"did-{task}", TASK_ANSWERS, "trial", 600, picture, condition, says, task=task)


def _listed_options(fields: object) -> tuple[str, ...]:
    options = fields.get("options") if isinstance(fields, Mapped) else None
    return tuple(option for option in options or () if isinstance(option, str))


def _read_says(entry: Entry, condition: Condition, options: tuple[str, ...]) -> tuple[tuple[float, ...], ...]:
    """P(answer | level): the table, softened by the share of people who answer as anyone would."""
    trust = entry.number("trust", 0.3, 1.0)
    never = HARD_SIGN if entry.flag("hard", False) else WORDS["never"]
    if entry.fields.get("says") == "as-named":
        entry.text("says")
        for level in condition.levels:
            if level not in options:
                entry.report("says", f"is as-named but no option is called {level!r}.", "Name it or write a table.")
        table = {level: {level: "almost-always"} for level in condition.levels if level in options}
    else:
        table = {
            level: read_words(below, level, options)
            for level, below in entry.names("says", required=True)
            if below.is_known(level, level, list(condition.levels))
        }
    if not options:
        return ()
    rows = [spread(table.get(level, {}), options, never) if level in table else None for level in condition.levels]
    usual = rows[max(range(len(rows)), key=lambda i: condition.sound[i] if rows[i] else -1.0)] or ()
    if not usual:
        entry.report("says", "has no row for any level.", "Say what people answer for each level.")
        return ()
    told = [row or usual for row in rows]
    anyone = [sum(s * row[i] for s, row in zip(condition.sound, told, strict=True)) for i in range(len(options))]
    return tuple(tuple(trust * p + (1 - trust) * a for p, a in zip(row, anyone, strict=True)) for row in told)


def _read_flags(entry: Entry, options: tuple[str, ...], flags: list[str]) -> dict[str, str]:
    return {
        option: below.choice(option, flags)
        for option, below in entry.names("flags")
        if below.is_known(option, option, list(options))
    }

"""Red flags and tasks: the part of a pack that outranks its odds."""

from collections.abc import Iterable, Mapping

from triage.engine.enums import Competence, Contact, PhoneService, SafetyGate, SignalWord, SwitchUse
from triage.engine.frequency import distribution, in_order
from triage.engine.pack import Condition, Effect, Fault, Level, Observation, RedFlag, Task, Variant
from triage.knowledge.entry import Entry, entries
from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import LocatedDict

CURE_LEVELS = ("no", "yes")


def build_red_flags(
    file: str, fields: LocatedDict, options: Mapping[str, Iterable[str]], problems: list[PackProblem]
) -> dict[str, RedFlag]:
    """Every red flag; the order of the file is the order to act in. `options` are those of each observation."""
    flags = {}
    for rank, (name, entry) in enumerate(entries(file, fields, problems)):
        flags[name] = RedFlag(
            id=name,
            level=entry.member("level", Level),
            rank=rank,
            signal=entry.member("signal", SignalWord),
            switches=entry.member("switches", SwitchUse),
            contact=entry.member("contact", Contact),
            phone_numbers=entry.members("phone_numbers", PhoneService),
            signs=_signs(entry, options),
            picture=entry.text("picture", "front"),
        )
        entry.text("rule")
        entry.close()
    return flags


def _signs(entry: Entry, options: Mapping[str, Iterable[str]]) -> tuple[tuple[str, str], ...]:
    """The answers that raise the flag, written as one or as a list; a flag may have none of its own."""
    if isinstance(entry.fields.get("signs"), list):
        written = list(entry.items("signs"))
    else:
        below = entry.below("signs")
        written = [below] if below is not None and below.fields else []
    found = [sign.answer(options) for sign in written]
    for sign in written:
        sign.close()
    return tuple(answer for answer in found if answer is not None)


def check_signs(
    file: str,
    fields: LocatedDict,
    flags: Mapping[str, RedFlag],
    observations: Mapping[str, Observation],
    problems: list[PackProblem],
) -> None:
    """Refuse a sign that its own question does not flag, or flags as something else: the danger page would say one
    thing and the answer do another."""
    for flag in flags.values():
        entry = Entry(file, flag.id, fields[flag.id], problems)
        for observation, option in flag.signs:
            raises = observations[observation].flags.get(option) if observation in observations else flag.id
            if raises != flag.id:
                does = f"raises {raises}" if raises else "raises no flag"
                entry.report(
                    "signs",
                    f"is {observation}: {option}, which {does} in observations.yaml.",
                    f"Write `flags: {{{option}: {flag.id}}}` there, or take the sign away here.",
                )


def build_tasks(
    file: str,
    fields: LocatedDict,
    faults: Mapping[str, Fault],
    flags: Mapping[str, RedFlag],
    variants: Mapping[str, Variant],
    observations: Iterable[str],
    problems: list[PackProblem],
) -> dict[str, Task]:
    """Every task, with who may do it and what forbids it."""
    options = {variant.id: variant.options for variant in variants.values()}
    tasks = {}
    for name, entry in entries(file, fields, problems):
        tasks[name] = Task(
            id=name,
            competence=entry.member("competence", Competence),
            helps=frozenset(entry.ids("helps", faults)),
            cures=frozenset(entry.ids("cures", faults, ())),
            unsafe_with=frozenset(entry.ids("unsafe_with", faults, ())),
            not_after=frozenset(entry.ids("not_after", flags, ())),
            gates=entry.members("gates", SafetyGate),
            needs_heat=entry.flag("needs_heat", False),
            minutes=entry.number("minutes", 0, 600),
            picture=entry.text("picture"),
            outcome=entry.choice("outcome", observations) if entry.has("outcome") else f"did-{name}",
            only_after=frozenset(entry.ids("only_after", flags, ())),
            requires_variant=entry.gate("requires_variant", options),
            further_outcomes=entry.ids("further_outcomes", observations, ()),
        )
        entry.close()
    return tasks


def cure_condition(task: Task) -> Condition:
    """Whether this task would put the oven right: a condition of its own, so that "did that fix it?" is evidence."""
    frequencies = in_order({"no": "almost-always"}, CURE_LEVELS)
    return Condition(f"cured-by-{task.id}", CURE_LEVELS, distribution(frequencies), frequencies=frequencies)


def cure_effect(task: Task) -> Effect:
    """What a fault that the task cures does to that condition."""
    frequencies = in_order({"yes": "almost-always", "no": "rarely"}, CURE_LEVELS)
    return Effect(f"cured-by-{task.id}", distribution(frequencies), frequencies=frequencies)

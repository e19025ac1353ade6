"""Variants and conditions: the nouns the rest of a pack is written in."""

from collections.abc import Collection, Mapping

from triage.engine.frequency import FREQUENCIES, NEVER, distribution, in_order
from triage.engine.pack import CANT_TELL, Condition, Variant
from triage.knowledge.entry import Entry, entries
from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import LocatedDict

SUM_TOLERANCE = 1e-6


def build_variants(file: str, fields: LocatedDict, problems: list[PackProblem]) -> dict[str, Variant]:
    """Every variant with its shares; the `question` part is read by the observations."""
    variants = {}
    for name, entry in entries(file, fields, problems):
        shares = read_shares(entry, "shares")
        if len(shares) > 1:
            variants[name] = Variant(name, tuple(shares), tuple(shares.values()))
        elif shares:
            entry.report("shares", "has fewer than two options.", "Name every option with its share.")
        refuse_cant_tell(entry, "shares", shares)
        entry.below("question")
        entry.close()
    return variants


def refuse_cant_tell(entry: Entry, key: str, options: Collection[str]) -> None:
    """Not knowing is an answer to every question, and an option of that name would take its place."""
    if CANT_TELL in options:
        entry.report(key, f"names {CANT_TELL!r}, which every question has by itself.", "Leave it out.")


def read_shares(entry: Entry, key: str) -> dict[str, float]:
    """Options and their shares, which must add up to one."""
    named = entry.names(key, required=True)
    shares = {option: below.number(option, 0, 1) for option, below in named if below.is_id(option, option)}
    if abs(sum(shares.values()) - 1) > SUM_TOLERANCE:
        entry.report(key, f"adds up to {sum(shares.values()):g}.", "Make the shares add up to 1.")
    return shares


def build_conditions(
    file: str, fields: LocatedDict, variants: Mapping[str, Variant], problems: list[PackProblem]
) -> dict[str, Condition]:
    """Every condition with its levels and how a sound oven stands."""
    conditions = {}
    for name, entry in entries(file, fields, problems):
        levels = entry.ids("levels")
        floor = entry.number("floor", 0.0001, 0.05, FREQUENCIES[NEVER])
        baseline = in_order(read_frequencies(entry, "baseline", levels), levels)
        parent = (entry.choice("parent", variants) or None) if entry.has("parent") else None
        allowed_on = {}
        for level, only in entry.names("allowed_on") if parent else ():
            if parent and only.is_known(level, level, list(levels)):
                allowed_on[level] = frozenset(only.ids(level, variants[parent].options))
        entry.close()
        if len(levels) < 2:
            entry.report("levels", "needs at least two levels.", "List them from least to most dominant.")
        else:
            conditions[name] = Condition(
                name, levels, distribution(baseline, floor), floor, parent, allowed_on, frequencies=baseline
            )
    return conditions


def read_frequencies(entry: Entry, key: str, names: tuple[str, ...]) -> dict[str, str]:
    """Names and frequency words under `key`; names must be in `names`, words in the one table."""
    found = {}
    for name, below in entry.names(key, required=True):
        if below.is_known(name, name, list(names)):
            found[name] = below.choice(name, FREQUENCIES)
    if not found and names:
        entry.report(key, "names nothing.", f"Use a word of: {', '.join(FREQUENCIES)}.")
    return found

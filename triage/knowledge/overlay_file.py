"""The file an accepted overlay is kept in: read strictly, written whole or not at all.

An overlay lies in the pack's folder `overlays/`. The newest by name counts; the others are the record of what was
accepted before, because each is made from the pack as written and from all outcomes so far. It names the hash of the
rules it was made for and is refused once they have changed. A proposal is the same file without who and when.
"""

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import yaml

from triage.engine.frequency import Row
from triage.engine.pack import Pack
from triage.knowledge.build_conditions import SUM_TOLERANCE
from triage.knowledge.entry import Entry
from triage.knowledge.overlay import AnswerKey, EffectKey, Numbers, apply_overlay, learnable_answers, learnable_effects
from triage.knowledge.problems import PackProblem, PackProblems
from triage.knowledge.yaml_reader import read_yaml

FOLDER = "overlays"
SMALLEST_CHANCE = 1e-6
DIGITS = 6
ROWS = ("log_score", "effects", "answers")


@dataclass(frozen=True, slots=True, eq=False)
class Overlay:
    """Learnt numbers and where they come from. `rules` is the hash of the pack they were made for; `firm` is empty
    for all firms together; `accepted_by` and `accepted_on` are empty in a proposal; `log_score` is the mean over
    held-out outcomes before and after."""

    pack: str
    rules: str
    outcomes: int
    log_score: tuple[float, float]
    numbers: Numbers
    firm: str = ""
    accepted_by: str = ""
    accepted_on: str = ""


def newest_overlay(folder: Path) -> Path | None:
    """The overlay that counts among those in `folder`."""
    return max(folder.glob("*.yaml"), default=None)


def with_overlay(pack: Pack, rules: str, path: Path) -> Pack:
    """The pack with the accepted overlay at `path` over it; its version names both. Raises PackProblems."""
    overlay = read_overlay(path, f"{FOLDER}/{path.name}", pack, rules)
    mark = hashlib.sha256(path.read_bytes()).hexdigest()[:8]
    return apply_overlay(pack, overlay.numbers, f"{pack.version}-{mark}")


def read_overlay(path: Path, shown: str, pack: Pack, rules: str, proposal: bool = False) -> Overlay:
    """The overlay or, where asked for, the proposal at `path`. Raises PackProblems with everything wrong in it."""
    problems: list[PackProblem] = []
    fields = read_yaml(path, shown, problems)
    if fields is None:
        raise PackProblems(problems)
    top = Entry(shown, "overlay", fields, problems)
    overlay = Overlay(
        pack=_same(top, "pack", pack.id, "Lay it over the pack it was made for."),
        rules=_same(top, "rules", rules, "The pack has changed since: learn again from the outcomes, or delete it."),
        outcomes=int(top.number("outcomes", 1, 10_000_000)),
        log_score=_log_score(top),
        numbers=Numbers(_calls(top, pack), _effects(top, pack), _answers(top, pack)),
        firm=top.text("firm") if top.has("firm") else "",
        accepted_by="" if proposal else top.text("accepted_by"),
        accepted_on="" if proposal else _day(top, "accepted_on"),
    )
    if overlay.firm:
        top.is_id("firm", overlay.firm)
    top.close()
    if problems:
        raise PackProblems(problems)
    return overlay


def _same(top: Entry, key: str, wanted: str, remedy: str) -> str:
    found = top.text(key)
    if found and found != wanted:
        top.report(key, f"is {found!r}, and that of this pack is {wanted!r}.", remedy)
    return found


def _day(top: Entry, key: str) -> str:
    text = top.text(key)
    try:
        date.fromisoformat(text)
    except ValueError:
        if text:
            top.report(key, f"is no date: {text!r}.", "Write it as '2026-03-01'.")
    return text


def _log_score(top: Entry) -> tuple[float, float]:
    below = top.below("log_score", required=True)
    if below is None:
        return 0.0, 0.0
    score = below.number("before", 0, 100), below.number("after", 0, 100)
    below.close()
    return score


def _calls(top: Entry, pack: Pack) -> dict[str, float]:
    known = list(pack.faults)
    named = ((fault, below) for fault, below in top.names("calls") if below.is_known(fault, fault, known))
    return {fault: below.number(fault, 1e-6, 1e6) for fault, below in named}


def _effects(top: Entry, pack: Pack) -> dict[EffectKey, Row]:
    learnable = learnable_effects(pack)
    effects: dict[EffectKey, Row] = {}
    for item in top.items("effects", required=False):
        when = frozenset(item.ids("when")) if item.has("when") else None
        key = item.choice("fault", pack.faults), item.choice("condition", pack.conditions), when
        named = (item.fields.get("fault"), item.fields.get("condition")) == key[:2]
        if named and key not in learnable:
            item.report("condition", "is no effect of this fault that outcomes may change.", "Leave the entry out.")
        elif named and key in effects:
            item.report("condition", "stands twice for this fault.", "Keep one of the entries.")
        elif named:
            effects[key] = _chances(item, "levels", pack.conditions[key[1]].levels)
        item.used |= {"levels", "when"}
        item.close()
    return effects


def _answers(top: Entry, pack: Pack) -> dict[AnswerKey, Row]:
    learnable = learnable_answers(pack)
    answers: dict[AnswerKey, Row] = {}
    for name, below in top.names("answers"):
        levels = [level for observation, level in learnable if observation == name]
        if not levels:
            below.report(name, "has no answers that outcomes may change.", "Leave it out.")
            continue
        for level, rows in below.names(name, required=True):
            if rows.is_known(level, level, levels):
                answers[name, level] = _chances(rows, level, pack.observations[name].options)
    return answers


def _chances(entry: Entry, key: str, names: tuple[str, ...]) -> Row:
    """A chance for every name, adding up to one; none of them zero, so that no single answer rules anything out."""
    below = entry.below(key, required=True)
    if below is None:
        return ()
    mistakes = len(entry.problems)
    row = [below.number(name, SMALLEST_CHANCE, 1) for name in names]
    below.close()
    total = sum(row)
    if len(entry.problems) == mistakes and abs(total - 1) > SUM_TOLERANCE:
        entry.report(key, f"adds up to {total:g}.", "Make the chances add up to 1.")
    return tuple(value / total for value in row)


def overlay_text(overlay: Overlay, pack: Pack) -> str:
    """The overlay as a file. Reading it back gives the same numbers to six digits."""
    fields: dict[str, object] = {"pack": overlay.pack, "rules": overlay.rules}
    fields |= {"firm": overlay.firm} if overlay.firm else {}
    if overlay.accepted_by:
        fields |= {"accepted_by": overlay.accepted_by, "accepted_on": overlay.accepted_on}
    fields |= {
        "outcomes": overlay.outcomes,
        "log_score": dict(zip(("before", "after"), (round(s, 4) for s in overlay.log_score), strict=True)),
        "calls": {fault: float(f"{calls:.{DIGITS}g}") for fault, calls in overlay.numbers.calls.items()},
        "effects": [_effect_fields(pack, key, row) for key, row in overlay.numbers.effects.items()],
        "answers": _answer_fields(pack, overlay.numbers.answers),
    }
    # Call rates one below the other, for people; a row of chances on one line.
    return "".join(
        yaml.safe_dump({name: value}, sort_keys=False, default_flow_style=None if name in ROWS else False, width=120)
        for name, value in fields.items()
    )


def _effect_fields(pack: Pack, key: EffectKey, row: Row) -> dict[str, object]:
    fault, condition, when = key
    fields: dict[str, object] = {"fault": fault, "condition": condition}
    if when is not None:
        fields["when"] = sorted(when)
    return fields | {"levels": _named(pack.conditions[condition].levels, row)}


def _answer_fields(pack: Pack, answers: Mapping[AnswerKey, Row]) -> dict[str, dict[str, dict[str, float]]]:
    fields: dict[str, dict[str, dict[str, float]]] = {}
    for (observation, level), row in answers.items():
        fields.setdefault(observation, {})[level] = _named(pack.observations[observation].options, row)
    return fields


def _named(names: Iterable[str], row: Row) -> dict[str, float]:
    """The row in six digits, adding up to one all the same: the largest chance takes what rounding left."""
    short = [max(round(value, DIGITS), SMALLEST_CHANCE) for value in row]
    largest = short.index(max(short))
    short[largest] = round(short[largest] + 1.0 - sum(short), DIGITS)
    return dict(zip(names, short, strict=True))

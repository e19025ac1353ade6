"""Plays a told case against the engine as a person would live it: complaint, danger page, then what is asked.

Only what the case states is answered; everything else is "can't tell". A caller may be cut short to the
first few questions they can answer, as some hang up or know little. Run as a module it prints the figures:
`python -m tests.published.replaying`.
"""

from dataclasses import dataclass
from pathlib import Path
from statistics import median

import yaml

from tests.builders import electric_oven
from tests.published.places import place
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Ask, MakeSafe, NotThis, advise
from triage.engine.pack import OPENING

HERE = Path(__file__).parent
MOST_STEPS = 60


@dataclass(frozen=True)
class Played:
    """How a case came out: `causes` likeliest first, `answered` of the `asked` questions with what the case
    tells."""

    case: str
    band: str
    causes: tuple[str, ...]
    answered: int
    asked: int
    expected_causes: tuple[str, ...]
    expected_bands: tuple[str, ...]

    @property
    def right_band(self):
        return self.band in self.expected_bands

    @property
    def missed_danger(self):
        return self.expected_bands == ("make-safe",) and self.band != "make-safe"

    def right_within(self, first):
        return bool(set(self.expected_causes) & set(self.causes[:first]))


def seen_cases():
    return yaml.safe_load((HERE / "seen_cases.yaml").read_text("utf-8"))["cases"]


def vignettes():
    return yaml.safe_load((HERE / "vignettes.yaml").read_text("utf-8"))["cases"]


def play(case, most=None):
    """One case from the start page to the end; `most` is how many questions the caller can answer at all."""
    pack, region = electric_oven(), place(case["region"])
    told = dict(case["answers"])
    trail = [*opening(pack, told), *danger_page(pack, told)]
    asked, answered = 0, 0
    for _ in range(MOST_STEPS):
        step = advise(pack, region, trail)
        question = step.observation if isinstance(step, Ask) else getattr(step, "memory", None)
        if question is None:
            return outcome(case, step, answered, asked)
        knows = question in told and (most is None or answered < most)
        trail.append((question, told[question] if knows else CANT_TELL))
        asked, answered = asked + 1, answered + knows
    raise AssertionError(f"{case['id']}: still asking after {MOST_STEPS} questions")


def opening(pack, told):
    """The line of the start page that fits best: its complaint, and what its words say besides.  A line is
    a link, so one has to be taken: of those that contradict nothing, the one that says most of what the
    case says and least that it does not."""
    if OPENING not in told:
        return []
    lines = [c.answers for c in pack.complaints if c.option == told[OPENING] and fits(c.answers, told)]
    best = max(lines, key=lambda line: 2 * len(line.keys() & told.keys()) - len(line), default={})
    return [(OPENING, told[OPENING]), *best.items()]


def fits(line, told):
    return all(told.get(observation, answer) == answer for observation, answer in line.items())


def danger_page(pack, told):
    """Every danger sign the case tells of, or "none of these"."""
    signs = [sign for flag in pack.red_flags.values() if flag.level.ends_check for sign in flag.signs]
    ticked = [(observation, option) for observation, option in signs if told.get(observation) == option]
    return ticked or [(SCREEN, NONE_OF_THESE)]


def outcome(case, step, answered, asked):
    if isinstance(step, NotThis):
        band, causes = "qualified", (step.reason,)
    else:
        band = "make-safe" if isinstance(step, MakeSafe) else step.verdict.band.value
        causes = tuple(c.fault for c in step.verdict.causes)
    expect = case["expect"]
    return Played(case["id"], band, causes, answered, asked, tuple(expect["causes"]), tuple(expect["band"]))


def summary(played):
    """The figures of many cases, by name."""
    return {
        "cases": len(played),
        "right cause first": sum(p.right_within(1) for p in played),
        "right cause in first three": sum(p.right_within(3) for p in played),
        "right band": sum(p.right_band for p in played),
        "dangers missed": sum(p.missed_danger for p in played),
        "questions, median": median(p.asked for p in played),
        "questions, most": max(p.asked for p in played),
    }


def main():
    """Prints the figures for whole callers and for those cut short."""
    for name, cases in (("seen cases", seen_cases()), ("vignettes", vignettes())):
        for most in (None, 10, 3):
            played = [play(case, most) for case in cases]
            print(name, "whole" if most is None else f"first {most}", summary(played))  # noqa: T201
            for p in played:
                if not (p.right_within(3) and p.right_band):
                    print("  ", p.case, p.band, *p.causes[:4])  # noqa: T201


if __name__ == "__main__":
    main()

"""The told cases of this folder, read and played as the author's bench does it.

Run as a module it prints the figures, for whole callers and for those cut short:
`python -m tests.published.replaying`.
"""

from functools import cache
from pathlib import Path

from tests.builders import electric_oven
from tests.published.places import place
from triage.authoring.cases import read_cases
from triage.authoring.check_runner import CheckRunner
from triage.authoring.figures import figures
from triage.authoring.replay import replay
from triage.engine import Band
from triage.knowledge.library import library

HERE = Path(__file__).parent


@cache
def seen_cases():
    return read_cases(HERE / "seen_cases.yaml", electric_oven(), library().regions)


@cache
def vignettes():
    return read_cases(HERE / "vignettes.yaml", electric_oven(), library().regions)


@cache
def walk_in(region):
    return CheckRunner(electric_oven(), place(region))


def play(case, most=None):
    """One case from the start page to the end; `most` is how many questions the caller can answer at all."""
    return replay(walk_in(case.region), case, most)


def missed_danger(finding):
    return finding.expected.bands == (Band.MAKE_SAFE,) and finding.band is not Band.MAKE_SAFE


def main():
    """Prints the figures for whole callers and for those cut short."""
    for name, cases in (("seen cases", seen_cases()), ("vignettes", vignettes())):
        for most in (None, 10, 3):
            played = [play(case, most) for case in cases]
            print(name, "whole" if most is None else f"first {most}")  # noqa: T201
            for row in figures(played).as_rows():
                print("  ", *row)  # noqa: T201
            for p in played:
                if not (p.right_within(3) and p.right_band):
                    print("  ", p.case, p.band.value, *(cause for cause, _ in p.causes[:4]))  # noqa: T201


if __name__ == "__main__":
    main()

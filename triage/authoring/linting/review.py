"""The whole review of a pack that loads: every kind of weakness, the gravest first, in the order of the files."""

from collections.abc import Callable
from pathlib import Path
from random import Random

from triage.authoring.check_runner import Walk
from triage.authoring.linting.finding import Finding, Gravity, Places
from triage.authoring.linting.indistinguishable_faults import twins
from triage.authoring.linting.trade_order import out_of_order
from triage.authoring.linting.uninformative_answers import weightless
from triage.authoring.linting.unreachable_questions import cannot_be_asked, never_asked
from triage.authoring.linting.wording import hard_to_read, missing_languages
from triage.authoring.simulated_users import draw_household
from triage.engine.model import compile_model
from triage.engine.pack import OPENING, Region
from triage.knowledge.library import Library
from triage.knowledge.problems import PackProblems

OWN_SHARES = Region("own-shares")


def review(
    library: Library, folder: Path, regions: Path, checks: int, seed: int, tick: Callable[[int], object]
) -> list[Finding]:
    """Every weakness of the pack in `folder`; `checks` made-up checks are walked, `tick` is told how many are done."""
    pack, places = library.pack, Places(folder)
    try:
        found = out_of_order(pack, places)
    except PackProblems as unreadable:
        found = refusals(unreadable)
    model = compile_model(pack, OWN_SHARES)
    found += twins(model, places)
    found += weightless(pack, places)
    found += cannot_be_asked(model, places)
    if checks:
        found += never_asked(model, asked_in(library, checks, seed, tick), checks, places)
    found += hard_to_read(library.texts, places)
    found += missing_languages(library.texts, library.regions, regions, places)
    return sorted(found, key=lambda finding: (finding.gravity.value, finding.problem))


def refusals(found: PackProblems) -> list[Finding]:
    """What the loader refuses, as findings."""
    return [Finding(Gravity.MISTAKE, "refused", problem) for problem in found.problems]


def asked_in(library: Library, checks: int, seed: int, tick: Callable[[int], object]) -> set[str]:
    """The questions that were put in `checks` checks, drawn from every region in turn; after a danger sign too."""
    dice = Random(seed)  # noqa: S311 (made-up people, no secret)
    walks = [Walk(library.pack, profile.region) for profile in library.regions.values()]
    asked = {OPENING}
    for number in range(checks):
        walk = walks[number % len(walks)]
        household = draw_household(walk.model, dice)
        trail = household.beginning()
        walk.to_the_end(trail, household.answer)
        asked |= {question for question, _ in trail}
        tick(number + 1)
    return asked

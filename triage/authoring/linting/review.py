"""The whole review of a pack that loads: every kind of weakness, the gravest first, in the order of the files."""

from collections.abc import Callable
from pathlib import Path
from random import Random

from triage.authoring.check_runner import CheckRunner
from triage.authoring.linting.finding import Gravity, LintFinding, PackSource
from triage.authoring.linting.indistinguishable_faults import indistinguishable_faults
from triage.authoring.linting.trade_order import out_of_order
from triage.authoring.linting.uninformative_answers import uninformative_answers
from triage.authoring.linting.unreachable_questions import never_asked, unreachable_questions
from triage.authoring.linting.wording import hard_to_read, missing_languages
from triage.authoring.simulated_users import draw_user
from triage.engine.model import compile_model
from triage.engine.pack import OPENING, Region
from triage.knowledge.library import Library
from triage.knowledge.problems import PackProblems

OWN_SHARES = Region("own-shares")


def review(
    library: Library, folder: Path, regions: Path, checks: int, seed: int, tick: Callable[[int], object]
) -> list[LintFinding]:
    """Every weakness of the pack in `folder`; `checks` simulated checks are run, `tick` hears how many are done."""
    pack, places = library.pack, PackSource(folder)
    try:
        found = out_of_order(pack, places)
    except PackProblems as unreadable:
        found = refusals(unreadable)
    model = compile_model(pack, OWN_SHARES)
    found += indistinguishable_faults(model, places)
    found += uninformative_answers(pack, places)
    found += unreachable_questions(model, places)
    if checks:
        found += never_asked(model, asked_in(library, checks, seed, tick), checks, places)
    found += hard_to_read(library.texts, places)
    found += missing_languages(library.texts, library.regions, regions, places)
    return sorted(found, key=lambda finding: (finding.gravity.value, finding.problem))


def refusals(found: PackProblems) -> list[LintFinding]:
    """What the loader refuses, as findings."""
    return [LintFinding(Gravity.MISTAKE, "refused", problem) for problem in found.problems]


def asked_in(library: Library, checks: int, seed: int, tick: Callable[[int], object]) -> set[str]:
    """The questions that were put in `checks` checks, drawn from every region in turn; after a danger sign too."""
    dice = Random(seed)  # noqa: S311 (simulated people, no secret)
    walks = [CheckRunner(library.pack, profile.region) for profile in library.regions.values()]
    asked = {OPENING}
    for number in range(checks):
        walk = walks[number % len(walks)]
        household = draw_user(walk.model, dice)
        trail = household.opening_answers()
        walk.run(trail, household.answer)
        asked |= {question for question, _ in trail}
        tick(number + 1)
    return asked

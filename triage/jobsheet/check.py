"""A check replayed from its trail: what the server itself concludes, whoever claims what."""

from collections.abc import Iterable
from dataclasses import dataclass
from urllib.parse import quote

from django.urls import reverse

from triage.engine import Emergency, OutOfScope, ParsedAnswers, Question, Result, Step, advise
from triage.engine.check import belief_of, finish
from triage.knowledge.library import Library, library
from triage.knowledge.region_builder import RegionProfile
from triage.knowledge.texts import Texts

REGION = "region"


@dataclass(frozen=True)
class Check:
    """`address` opens the same check again. `step` is where the questions stand."""

    library: Library
    place: RegionProfile
    texts: Texts
    step: Step
    address: str

    @property
    def reading(self) -> ParsedAnswers:
        return self.step.reading

    def conclusion(self) -> Result | Emergency:
        """The step, or what is known so far where the questions are not over."""
        if isinstance(self.step, Question | OutOfScope):
            region = self.place.region
            return finish(region, belief_of(self.library.pack, region, self.reading), self.reading)
        return self.step


def replay(trail: Iterable[tuple[str, str]], region: str, origin: str) -> Check:
    """The check these answers make in a known region. Never raises on what the trail holds."""
    known = library()
    place = known.regions[region]
    step = advise(known.pack, place.region, trail)
    address = f"{origin}{reverse('household-step')}?{trail_query(region, step.reading.answers.items())}"
    return Check(known, place, known.words(region), step, address)


def trail_query(region: str, answers: Iterable[tuple[str, str]]) -> str:
    """The query string that carries a trail."""
    return "&".join(f"{quote(name)}={quote(answer)}" for name, answer in ((REGION, region), *answers))

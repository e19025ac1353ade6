"""A check replayed from its trail comes out as it did on the page."""

from urllib.parse import parse_qsl, urlsplit

from tests.firm_builders import ORIGIN, TRAIL
from triage.engine import Emergency, Question, Result, advise
from triage.jobsheet.check import replay, trail_query
from triage.knowledge.library import library

SHOCK = [
    (question, answer)
    for question, asked in library().pack.observations.items()
    for answer, flag in asked.flags.items()
    if library().pack.red_flags[flag].level.ends_check
][:1]


def test_it_is_the_step_the_engine_gives():
    check = replay(TRAIL, "gb-eng", ORIGIN)
    assert check.step == advise(library().pack, library().regions["gb-eng"].region, TRAIL)


def test_its_address_opens_the_same_check(client):
    check = replay(TRAIL, "gb-eng", ORIGIN)
    parts = urlsplit(check.address)
    assert f"{parts.scheme}://{parts.netloc}" == ORIGIN
    assert parse_qsl(parts.query) == [("region", "gb-eng"), *TRAIL]
    assert client.get(f"{parts.path}?{parts.query}").status_code == 200


def test_an_unfinished_check_comes_to_what_is_known_so_far():
    check = replay(TRAIL, "gb-eng", ORIGIN)
    assert isinstance(check.step, Question)
    assert isinstance(check.conclusion(), Result)


def test_a_danger_sign_is_its_own_conclusion():
    check = replay(SHOCK, "gb-eng", ORIGIN)
    assert isinstance(check.step, Emergency)
    assert check.conclusion() is check.step


def test_signs_in_a_trail_are_written_so_that_they_come_back():
    trail = [("a b", "c&d=e"), ("é", "+")]
    assert parse_qsl(trail_query("ie", trail)) == [("region", "ie"), *trail]

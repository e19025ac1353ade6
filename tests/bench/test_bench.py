"""Every piece of the bench works, tried on three trails; its figures are for a quiet machine and not judged here."""

import pytest

from tests.bench.engine_speed import engine_speed
from tests.bench.first_visit import first_page_bytes, first_visit_bytes
from tests.bench.page_speed import page_speed
from tests.bench.server import built_static_files, production_server, server_cost
from triage.knowledge.library import library

FEW = 3


@pytest.fixture
def place():
    return library().pack, library().regions["gb-eng"].region


def test_the_engine_is_timed_beside_the_reference_library(place):
    speed = engine_speed(*place, FEW, FEW)
    assert speed["trails"] == FEW
    assert speed["hypotheses"] > len(place[0].faults)
    assert min(speed["advise"], speed["believe"], speed["library"]) > 0


def test_a_question_page_is_timed_beside_a_bare_one(place, settings):
    settings.ROOT_URLCONF = "tests.bench.urls"
    speed = page_speed(*place, FEW)
    assert speed["pages"] == FEW
    assert speed["question"] > speed["bare"] > 0


def test_the_production_server_is_watched_and_the_first_visit_weighed(place, context):
    with built_static_files(), production_server() as server:
        cost = server_cost(server, *place, FEW)
        assert min(cost["question"], cost["bare"]) >= 0
        packed, visit = first_page_bytes(server), first_visit_bytes(server, context)
    assert packed["html"] > 1000
    assert visit["bytes"] > packed["html"] + packed["css"]
    assert visit["answers"] >= 3

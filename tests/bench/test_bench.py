"""Every piece of the bench works, tried on three trails. Times are for a quiet machine and not judged here; what the
first page weighs is the same on every machine, and is."""

import subprocess
import sys

import pytest

from tests.bench.authoring_speed import authoring_speed
from tests.bench.call_speed import call_speed
from tests.bench.engine_speed import engine_speed
from tests.bench.first_visit import INITIAL_WINDOW, first_page_bytes, first_visit_bytes
from tests.bench.page_speed import page_speed
from tests.bench.phone_page_speed import phone_page_speed
from tests.bench.phone_speed import phone_speed
from tests.bench.server import built_static_files, production_server, server_cost
from triage.knowledge.library import library

FEW = 3


@pytest.fixture
def place():
    return library().pack, library().regions["gb-eng"].region


def test_the_bench_starts_without_django_set_up():
    subprocess.run([sys.executable, "-c", "import tests.bench.__main__"], check=True, env={})


def test_the_engine_is_timed_beside_the_reference_library(place):
    speed = engine_speed(*place, FEW, FEW)
    assert speed["trails"] == FEW
    assert speed["hypotheses"] > len(place[0].faults)
    assert min(speed["advise"], speed["believe"], speed["library"]) > 0


def test_the_authors_bench_is_timed_beside_one_step(place):
    speed = authoring_speed(*place, FEW)
    assert speed["checks"] == FEW
    assert min(speed["per minute"], speed["check"], speed["step"]) > 0


# Each request looks for old connections, and a test before may have left one.
@pytest.mark.django_db
def test_a_question_page_is_timed_beside_a_bare_one(place, settings):
    settings.ROOT_URLCONF = "tests.bench.urls"
    speed = page_speed(*place, FEW)
    assert speed["pages"] == FEW
    assert speed["question"] > speed["bare"] > 0


def test_the_production_server_is_watched_and_the_first_visit_weighed(place, context):
    with built_static_files(), production_server() as server:
        cost = server_cost(server, *place, FEW)
        assert min(cost["question"], cost["again"], cost["bare"]) >= 0
        packed, visit = first_page_bytes(server), first_visit_bytes(server, context)
    assert packed["html"] > 1000
    assert packed["html"] + packed["css"] <= INITIAL_WINDOW
    assert visit["bytes"] > packed["html"] + packed["css"]
    assert visit["answers"] >= 3


def test_the_phones_engine_is_timed_in_a_slowed_browser(place, context):
    speed = phone_speed(context, *place, FEW)
    assert speed.pop("trails") == FEW
    assert min(speed.values()) > 0
    assert speed["step, slowest"] >= speed["step"]


def test_pages_made_on_the_phone_are_timed_in_a_slowed_browser(place, context):
    speed = phone_page_speed(context, *place, FEW)
    assert speed.pop("pages") == FEW
    assert min(speed.values()) > 0
    assert speed["page, slowest"] >= speed["page"]


def test_the_box_of_the_call_page_is_timed_letter_by_letter(place, context):
    speed = call_speed(context, place[1], FEW)
    assert speed.pop("letters") > 10 * FEW
    assert speed.pop("lines") > 1
    assert 0 < speed["letter"] <= speed["letter, slowest"]

"""Clickjacking: a page is framed by nobody, or by the one firm it is done for; the desk by nobody ever."""

import pytest

from tests.attack.whole_site import World, every_answer
from tests.firm_builders import make_firm
from tests.household.hand_overs import form_address

pytestmark = pytest.mark.django_db
SITE = "https://hearth.example"


def ancestors(answer):
    result = answer.headers["Content-Security-Policy"].split("; ")
    return next(part for part in result if part.startswith("frame-ancestors")).removeprefix("frame-ancestors ")


def test_without_a_firm_that_frames_nothing_may_be_framed():
    answers = every_answer(World())
    assert {ancestors(answer) for name, answer in answers.items() if name != "static"} == {"'none'"}


def test_a_firms_own_site_may_frame_its_check_and_not_its_desk():
    world = World()
    world.firm.origins = [SITE]
    world.firm.save()
    answers = every_answer(world)
    framed = {name for name, answer in answers.items() if name != "static" and ancestors(answer) == SITE}
    assert framed == {"page: form", "household-sheet", "household-sheet-erase"}
    assert {ancestors(answers[name]) for name in answers if name.startswith("desk-")} == {"'none'"}


@pytest.mark.parametrize(
    "origin", ["*", "https://*", "https:", "'self'", "https://a.example; script-src *", "data:", 7]
)
def test_what_is_no_origin_opens_nothing(client, origin):
    assert ancestors(client.get(form_address(make_firm(origins=[origin])))) == "'none'"


def test_one_firms_name_does_not_open_anothers_check(client):
    make_firm(origins=["https://evil.example"], slug="evil")
    firm = make_firm(origins=[SITE])
    assert ancestors(client.get(form_address(firm) + "&x=firm")) == SITE
    assert ancestors(client.get(form_address(firm).replace(firm.slug, "evil"))) == "https://evil.example"

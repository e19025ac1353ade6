"""A request is read once, and what was wrong with its address is said in plain words."""

import pytest

from tests.firm_builders import make_firm
from triage.check_pages.request import read_check_request
from triage.jobsheet.sentences import sentence


def check_request(rf, query="", **headers):
    return read_check_request(rf.get(f"/check/?{query}", headers=headers))


def test_a_named_place_counts_and_a_guess_is_known_as_one(rf):
    named = check_request(rf, "region=us", **{"accept-language": "en-IE"})
    assert (named.region.name, named.region_named, named.notices) == ("United States", True, ())
    guessed = check_request(rf, **{"accept-language": "en-IE"})
    assert (guessed.region.name, guessed.region_named, guessed.notices) == ("Ireland", False, ())


def test_an_unknown_place_gives_the_default_and_says_so(rf, settings):
    settings.TRIAGE_DEFAULT_REGION = "nz"
    found = check_request(rf, "region=atlantis", **{"accept-language": "en-IE"})
    assert found.region.name == "New Zealand"
    assert [sentence("notice", notice=notice) for notice in found.notices] == [
        "We do not know the place in this address. The rules and numbers shown are for New Zealand."
    ]


def test_good_answers_are_kept_and_links_carry_only_those(rf):
    found = check_request(rf, "region=ie&complaint=no-heat&nonsense=1&heat-main=wrong")
    assert found.answers == {"complaint": "no-heat"}
    assert len(found.problems) == 2
    assert found.links.step() == "/check/?region=ie&complaint=no-heat"


def test_an_address_without_end_is_said_to_be_cut(rf):
    found = check_request(rf, "region=ie&" + "&".join(f"a{n}=b" for n in range(10_000)))
    assert [sentence("notice", notice=notice) for notice in found.notices] == [
        "The address was too long to read to its end. The first answers are used."
    ]


def test_the_site_knows_its_own_address(rf):
    assert check_request(rf).origin == "http://testserver"


@pytest.mark.django_db
def test_a_firm_brings_its_place_unless_another_is_named(rf):
    firm = make_firm(slug="hearth", region="nz")
    found = check_request(rf, "firm=hearth", **{"accept-language": "en-IE"})
    assert (found.firm, found.region.name, found.region_named) == (firm, "New Zealand", True)
    assert check_request(rf, "firm=hearth&region=us").region.name == "United States"


@pytest.mark.django_db
def test_a_firm_in_a_place_we_do_not_know_leaves_the_place_to_the_browser(rf):
    make_firm(slug="hearth", region="atlantis")
    found = check_request(rf, "firm=hearth", **{"accept-language": "en-IE"})
    assert (found.region.name, found.region_named) == ("Ireland", False)


@pytest.mark.django_db
@pytest.mark.parametrize("slug", ["nobody", "%00", "a" * 500, "../../x", "%F0%9F%A6%89"])
def test_a_firm_we_do_not_know_is_said_and_the_check_goes_on(rf, slug):
    found = check_request(rf, f"region=ie&firm={slug}&complaint=no-heat")
    assert found.firm is None
    assert [sentence("notice", notice=notice) for notice in found.notices] == [
        "We do not know the repair firm in this address. The check works without it."
    ]
    assert found.links.step() == "/check/?region=ie&complaint=no-heat"

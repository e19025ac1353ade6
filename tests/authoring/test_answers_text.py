"""A trail as an author pastes it, in any of its forms."""

import pytest
from hypothesis import given, settings, strategies

from tests.builders import ANYWHERE, make_pack
from triage.authoring.answers_text import LONGEST, InvalidAnswersText, known_check, read_text
from triage.query import check_query

PAIRS = (("complaint", "stays-cold"), ("danger", "none"))


@pytest.mark.parametrize(
    "text",
    [
        "complaint=stays-cold&danger=none",
        "?complaint=stays-cold&danger=none",
        "https://oven.example/check/?complaint=stays-cold&danger=none",
        '{"complaint": "stays-cold", "danger": "none"}',
        '  [["complaint", "stays-cold"], ["danger", "none"]]\n',
    ],
)
def test_a_query_string_an_address_and_json_say_the_same(text):
    assert read_text(text).pairs == PAIRS
    assert read_text(text).region is None


def test_the_region_is_no_answer():
    told = read_text("region=us&complaint=stays-cold&danger=none")
    assert (told.region, told.pairs) == ("us", PAIRS)


def test_what_is_written_is_read_again():
    assert read_text(check_query("us", PAIRS)).pairs == PAIRS
    assert check_query("us", [("a b", "ü&=")]) == "region=us&a%20b=%C3%BC%26%3D"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "The trail is empty."),
        ("{}", "The trail is empty."),
        ("https://oven.example/check/?", "The trail is empty."),
        ("complaint", "'complaint' is no trail. Write it as question=answer"),
        ('{"complaint":', "begins like JSON and is not"),
        ('{"complaint": 3}', "A trail in JSON is"),
        ('["complaint"]', "A trail in JSON is"),
        ("[" * 50_000, "begins like JSON and is not"),
        ("a=%ff", "bytes that are no text"),
        ("a=" + "b" * LONGEST, f"longer than {LONGEST} signs"),
    ],
)
def test_what_is_no_trail_is_refused_in_one_sentence(text, said):
    with pytest.raises(InvalidAnswersText, match=said.replace("?", r"\?")) as refused:
        read_text(text)
    assert "\n" not in str(refused.value)


@settings(deadline=None)
@given(strategies.text(max_size=80))
def test_any_text_is_read_or_refused(text):
    sentence = ""
    try:
        told = read_text(text)
    except InvalidAnswersText as refused:
        sentence = str(refused)
    assert sentence.endswith(".") if sentence else told.pairs or told.region


def test_ids_that_the_pack_does_not_have_are_all_named():
    with pytest.raises(InvalidAnswersText, match=r"^The pack has no wheel, heats=blue\. Take the ids from"):
        known_check(make_pack(), ANYWHERE, (("wheel", "round"), ("heats", "blue")))
    many = tuple((f"wheel-{n}", "x") for n in range(9))
    with pytest.raises(InvalidAnswersText, match="wheel-4 and 4 more"):
        known_check(make_pack(), ANYWHERE, many)


def test_what_is_only_out_of_place_is_kept_as_a_problem():
    check = known_check(make_pack(), ANYWHERE, (("heats", "normal"), ("code-stays", "stays"), ("heats-well", "yes")))
    assert [problem.kind for problem in check.problems] == ["retired", "out-of-place"]
    assert dict(check.answers) == {"heats": "normal"}

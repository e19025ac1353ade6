"""What a check came to, as plain values: nothing left out, nothing said that nobody knows."""

from urllib.parse import parse_qsl, urlsplit

import pytest

from tests.firm_builders import ANSWERS, ORIGIN, check_after
from tests.household.checks_done import answers_of
from triage.engine import explanation
from triage.jobsheet.summary import check_url, summarise_with_kit
from triage.knowledge.library import library

PACK = library().pack
ELEMENT = answers_of("fan-element-open", "no-heat")


def summary(trail, region="gb-eng"):
    check = check_after(trail, region)
    return summarise_with_kit(check, check_url(check, ORIGIN))


def flagged(level, switches):
    """A trail with one sign of this level, on which switches may be touched so."""
    return next(
        (question, answer)
        for question, asked in PACK.observations.items()
        for answer, flag in asked.flags.items()
        if PACK.red_flags[flag].level.value == level and PACK.red_flags[flag].switches == switches
    )


def test_every_answer_stands_in_exactly_one_place():
    check = summary(ELEMENT.items())
    items = [a["observation"] for part in ("oven", "answers", "readings", "attempted") for a in check[part]]
    assert sorted([*items, "complaint", "danger"]) == sorted(ELEMENT)
    assert check["danger_signs"] == "none-seen"
    assert check["finished"]


def test_the_weights_are_those_of_the_engine():
    check = summary(ELEMENT.items())
    belief = check_after(ELEMENT.items()).belief
    leading = check["causes"][0]["fault"]
    weights = explanation.weights_of_evidence(belief.model, ELEMENT, (leading,))[leading]
    assert [(w["observation"], w["decibans"]) for w in check["causes"][0]["weights"]] == [
        (w.observation, round(w.decibans, 2)) for w in weights
    ]
    data = {a["observation"]: a["decibans"] for part in ("oven", "answers") for a in check[part]}
    assert data == {w.observation: round(w.decibans, 2) for w in weights if w.observation in data}


@pytest.mark.parametrize(
    ("answer", "said", "text"),
    [
        ("yes", "off", "Said to be off. Not proved dead."),
        ("no", "on", "Said not to be off."),
        ("unsure", "not-said", "Not said to be off."),
    ],
)
def test_nobody_is_ever_told_that_the_oven_is_dead(answer, said, text):
    check = summary([("complaint", "no-heat"), ("supply-off", answer)])
    assert check["supply"] == {"said": said, "proved_dead": False, "text": text}


def test_a_check_without_the_danger_page_says_so():
    check = summary([("complaint", "no-heat")])
    assert (check["danger_signs"], check["finished"]) == ("not-asked", False)


def test_a_red_flag_comes_with_what_the_person_was_told():
    check = summary([flagged("stop", "any")])
    (flag,) = check["red_flags"]
    first = library().texts_for("gb-eng").flags[flag["flag"]].first
    assert flag["instructed"]
    assert set(flag["instructed"]) < set(first) or flag["instructed"] == list(first)
    assert "{" not in "".join(flag["instructed"])
    assert (check["band"], check["danger_signs"], check["finished"]) == ("make-safe", "seen", True)


def test_where_no_switch_may_be_touched_no_other_advice_is_said_to_have_been_given():
    check = summary([flagged("emergency", "never"), flagged("stop", "any")])
    data = {flag["flag"]: flag["instructed"] for flag in check["red_flags"]}
    for name, lines in data.items():
        assert bool(lines) is (PACK.red_flags[name].switches == "never")


def test_what_was_tried_stands_apart_with_its_result():
    task = next(task for task in PACK.tasks.values() if task.competence == "ordinary" and task.outcome)
    outcome = PACK.observations[task.outcome].options[-1]
    check = summary([*ANSWERS, (task.outcome, outcome)])
    if not check["ignored_answers"]:
        assert [(a["observation"], a["answer"]) for a in check["attempted"]] == [(task.outcome, outcome)]
    assert task.outcome not in [a["observation"] for a in check["answers"]]


def test_the_place_decides_the_words():
    names = {summary(ANSWERS, region)["region"]["name"] for region in library().regions}
    assert names == {profile.name for profile in library().regions.values()}
    grill = [("complaint", "no-heat"), ("danger", "none")]
    text = {str(summary(grill, region)["causes"]) for region in ("gb-eng", "us")}
    assert len(text) == 2


def test_its_address_opens_the_same_check(client):
    parts = urlsplit(summary(ANSWERS)["check_url"])
    assert f"{parts.scheme}://{parts.netloc}" == ORIGIN
    assert parse_qsl(parts.query) == [("region", "gb-eng"), *ANSWERS]
    assert client.get(f"{parts.path}?{parts.query}").status_code == 200

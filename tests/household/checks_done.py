"""Whole checks as a person whose oven has a certain fault would answer, and the pages they lead to.

Found by walking, not written down, so that a better question order changes no test.
"""

from functools import cache
from urllib.parse import urlencode

from tests.reading_pages import read_page
from triage.engine import Question, compile_model, infer_belief, parse_answers, run_check
from triage.knowledge.library import library

ENGLAND = "gb-eng"
LONGEST = 30


def address(path="/check/", region=ENGLAND, **answers):
    """An address with these answers; `heat_main="no-heat"` is the answer to heat-main."""
    named = {name.replace("_", "-"): answer for name, answer in answers.items()}
    return at(path, named, region)


def at(path, answers, region=ENGLAND):
    return f"{path}?{urlencode({'region': region, **answers})}"


@cache
def answers_of(fault, complaint, region=ENGLAND, **given):
    """The answers of a check from complaint to advice, each the one that speaks most for `fault`, none a red flag
    unless it is given."""
    pack, place = library().pack, library().regions[region].region
    model = compile_model(pack, place)
    answers = {"complaint": complaint, "danger": "none", **{k.replace("_", "-"): v for k, v in given.items()}}
    for _ in range(LONGEST):
        step = run_check(pack, place, answers.items()).step
        if not isinstance(step, Question):
            return answers
        asked = pack.observations[step.observation]
        options = [option for option in asked.options if option not in asked.flags]

        def chance(option, name=asked.id):
            told = parse_answers(pack, {**answers, name: option}.items()).answers
            return infer_belief(model, told).faults[fault]

        answers[asked.id] = max(options, key=chance)
    raise AssertionError(f"no advice after {LONGEST} answers")


def open_page(client, address, **headers):
    """The page at an address, which must be there."""
    response = client.get(address, headers=headers)
    assert response.status_code == 200
    return read_page(response)


def links_of(page, selector="main a"):
    """Where each link leads, by its words."""
    return {link.text: link.attributes["href"] for link in page.select(selector)}

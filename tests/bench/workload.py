"""Many people at their ovens at once: which pages they ask for, in which order, and what some of them hand over.

Many begin alike and go their own ways later, so the first steps come again and again and most others never twice.
"""

import base64
import json
import random
import re
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from os import cpu_count
from urllib.parse import urlencode, urlsplit
from uuid import uuid4

from tests.bench.connection import get, post
from triage.authoring.simulated_users import draw_user
from triage.engine import Question, Result, compile_model, run_check
from triage.jobsheet.booking_rule import booking_refusal
from triage.knowledge.library import library

REGION = "gb-eng"
CONSENT = "The firm may have what I write here and my answers about the oven, and call me about this repair."
STATE = re.compile(rb'name="state" value="([^"]+)"')
PLACE = re.compile(rb"\r\nlocation: *(\S+)", re.IGNORECASE)
# How many others begin between one answer of a person and the next.
BETWEEN_ANSWERS = 25


def simulated_workload(checks, name):
    """The question pages that so many people ask for, in order, and the answers of those who may book a visit."""
    shares = [f"{name} {share}" for share in range(cpu_count() or 1)]
    with ProcessPoolExecutor() as pool:
        parts = list(pool.map(partial(_some_checks, checks // len(shares) + 1), shares))
    walks = [walk for part in parts for walk in part][:checks]
    asked = [
        (n + step * BETWEEN_ANSWERS, page) for n, (pages, _) in enumerate(walks) for step, page in enumerate(pages)
    ]
    return [page for _when, page in sorted(asked)], [advised for _pages, advised in walks if advised]


def _some_checks(count, name):
    pack, region = library().pack, library().regions[REGION].region
    dice, model = random.Random(name), compile_model(pack, region)
    return [_one_walk(pack, region, draw_user(model, dice)) for _ in range(count)]


def _one_walk(pack, region, household):
    """The pages on which this household is asked, and its answers if it may book a visit."""
    pages, trail = [], tuple(household.opening_answers())
    while isinstance((check := run_check(pack, region, trail)).step, Question):
        pages.append(f"/check/?{urlencode([('region', REGION), *trail])}")
        trail = (*trail, (check.step.observation, household.answer(check.step.observation)))
    return pages, trail if isinstance(check.step, Result) and booking_refusal(check) is None else None


def hand_over(firm, trail):
    """A request by which a firm's own system hands over this check, and the key that makes it one of its kind."""
    key = uuid4().hex
    booking = {"name": f"Person {key[:6]}", "telephone": "020 7946 0000", "consent": CONSENT}
    body = json.dumps({"region": REGION, "answers": trail, "booking": booking}).encode()
    headers = {
        "Content_Type": "application/json",
        "Authorization": f"Bearer {firm['key']}",
        "Idempotency_Key": key,
    }
    return key, post(f"/api/v1/firms/{firm['slug']}/job-sheets", body, **headers)


def form_for(firm, trail):
    """The address of the page on which a householder hands this check to the firm, and the request for it."""
    address = f"/check/hand-over/?{urlencode([('region', REGION), ('firm', firm['slug']), *trail])}"
    return address, get(address, packed=False)


def filled_in(address, page):
    """That page's form as a householder sends it, and the key it carries; None where the page has no form."""
    state = STATE.search(page)
    if state is None:
        return None
    # The field is signed and not sealed: a list of the firm and the key, in base64.
    told = state[1].split(b":")[0]
    key = json.loads(base64.urlsafe_b64decode(told + b"=" * (-len(told) % 4)))[1]
    typed = {"state": state[1].decode(), "name": f"Person {key[:6]}", "telephone": "020 7946 0000", "agreed": "yes"}
    return key, post(address, urlencode(typed).encode(), Content_Type="application/x-www-form-urlencoded")


def reference_in(answer):
    """The job sheet's reference, where a program or a person was told that it is written down; else None."""
    if answer.status in (200, 201) and b"application/json" in answer.head.lower():
        return json.loads(answer.body)["reference"]
    place = PLACE.search(answer.head) if answer.status == 302 else None
    return urlsplit(place[1].decode()).path.split("/")[2] if place else None

"""What people kept of earlier releases still works: links, codes, firms' pages, open forms, forms that waited.

A question that was renamed stands among the pack's `retired`: its old answer is told as no longer asked, and every
other answer of the link is kept.
"""

from pathlib import Path
from urllib.parse import urlsplit

import pytest
import yaml

from tests.api.asking import bearer, send
from tests.firm_builders import make_firm, make_job_sheet
from tests.releases.known_ids import known_ids
from triage.check_pages.form_state import key_in
from triage.engine import parse_answers
from triage.jobsheet.sender_token import hash_of
from triage.knowledge.library import library
from triage.models import JobSheet
from triage.query import parse_query
from triage.web.api_keys import make_key
from triage.web.step_header import STEP

# The kinds of page under the names of then, which nobody kept, and of now.
RENAMED_PAGES = {"make_safe": "emergency", "advice": "result", "exit": "out_of_scope"}
RELEASES = sorted(folder for folder in Path(__file__).parent.iterdir() if (folder / "ids.yaml").exists())


def kept(folder, name):
    return yaml.safe_load((folder / f"{name}.yaml").read_text("utf-8"))


LINKS = {folder.name: kept(folder, "links") for folder in RELEASES}
QUEUED = {folder.name: kept(folder, "queued") for folder in RELEASES}
ADDRESSES = [
    *((release, one["address"], one) for release, links in LINKS.items() for one in links["links"]),
    *((release, urlsplit(one["text"])._replace(scheme="", netloc="").geturl(), one)
      for release, links in LINKS.items() for one in links["codes"]),
]  # fmt: skip
WAITING = [(release, one) for release, queued in QUEUED.items() for one in queued["hand_overs"]]
REQUESTS = [(release, one) for release, queued in QUEUED.items() for one in queued["requests"]]


def lost(answers, told):
    """What is neither kept nor known to be no longer asked."""
    retired = library().pack.retired
    return {name: answer for name, answer in told.items() if answers.get(name) != answer and name not in retired}


def test_the_first_release_is_on_record():
    assert "2026-11" in LINKS


@pytest.mark.parametrize("release", LINKS)
def test_every_id_of_then_is_known_or_retired(release):
    then, now = kept(Path(__file__).parent / release, "ids"), known_ids()
    retired = library().pack.retired
    gone = {name for name in then["observations"] if name not in now["observations"] and name not in retired}
    assert gone == set()
    for name, options in then["observations"].items():
        if name not in retired:
            assert set(options) <= set(now["observations"][name]), name
    for kind in then.keys() - {"observations"}:
        assert set(then[kind]) <= set(now[kind]), kind


@pytest.mark.parametrize(
    ("release", "address", "one"), ADDRESSES, ids=lambda told: told if isinstance(told, str) else ""
)
def test_an_old_link_leads_to_its_page_and_keeps_its_answers(client, release, address, one):
    answer = client.get(address)
    assert (answer.status_code, answer.headers[STEP]) == (200, RENAMED_PAGES.get(one["page"], one["page"]))
    reading = parse_answers(library().pack, parse_query(urlsplit(address).query).pairs)
    assert lost(reading.answers, one["keeps"]) == {}
    for name, value in one["keeps"].items():
        if name not in library().pack.retired:
            assert f"{name}={value}" in answer.content.decode(), name


@pytest.mark.django_db
@pytest.mark.parametrize("release", LINKS)
def test_what_stands_in_firms_pages_is_still_there(client, release):
    make_firm(slug="hearth")
    for address in LINKS[release]["firm_pages"]:
        answer = client.get(address, follow=True)
        assert answer.status_code == 200, address
        assert "We do not know the repair firm" not in answer.content.decode()


@pytest.mark.django_db
@pytest.mark.parametrize("release", LINKS)
def test_a_senders_link_opens_the_sheet_on_a_site_that_kept_its_key(client, settings, release):
    links = LINKS[release]
    sheet = make_job_sheet()
    JobSheet.objects.filter(pk=sheet.pk).update(
        reference=links["sheet"]["reference"], token_hash=hash_of(links["sheet"]["token"])
    )
    settings.SECRET_KEY = links["key"]
    address = f"/sheet/{links['sheet']['reference']}/"
    answer = client.get(f"{address}?token={links['sheet']['token']}")
    assert answer.status_code == 200
    assert f"{address}erase/?token={links['sheet']['token']}" in answer.content.decode()


@pytest.mark.parametrize("release", LINKS)
def test_a_form_that_was_open_meanwhile_can_be_sent(settings, monkeypatch, release):
    form = LINKS[release]["open_form"]
    settings.SECRET_KEY = LINKS[release]["key"]
    monkeypatch.setattr("time.time", lambda: form["opened"] + 3600.0)
    assert key_in(form["state"], form["firm"]) == form["holds"]


@pytest.mark.django_db
@pytest.mark.parametrize(("release", "one"), WAITING, ids=lambda told: told if isinstance(told, str) else "")
def test_a_hand_over_that_waited_on_a_phone_is_taken_once(client, release, one):
    make_firm(slug="hearth")
    headers = {"Idempotency-Key": one["key"], "Origin": "http://testserver"}
    answers = [client.post(one["action"], dict(one["fields"]), headers=headers) for _ in range(2)]
    assert [answer.status_code for answer in answers] == [200, 200]
    sheet = JobSheet.objects.get()
    assert {answer.json()["reference"] for answer in answers} == {sheet.reference}
    assert lost(dict(sheet.answers), one["keeps"]) == {}
    assert sheet.name == dict(one["fields"])["name"]


@pytest.mark.django_db
@pytest.mark.parametrize(("release", "one"), REQUESTS, ids=lambda told: told if isinstance(told, str) else "")
def test_a_firms_own_program_goes_on_as_before(client, release, one):
    firm = make_firm(slug="hearth")
    _key, words = make_key(firm=firm, name="program")
    assert send(client, firm, one["body"], key=one["key"], **bearer(words)).status_code == 201
    assert lost(dict(JobSheet.objects.get().answers), one["keeps"]) == {}


def test_an_answer_that_is_lost_would_be_seen():
    assert lost({"complaint": "no-heat"}, {"complaint": "no-heat", "onset": "sudden"}) == {"onset": "sudden"}

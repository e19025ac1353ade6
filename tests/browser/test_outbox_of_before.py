"""A visit that waited on a phone while the site was brought to a new release: today's outbox finds what the release of
then wrote down, and sends it once."""

import pytest
from playwright.sync_api import expect

from tests.browser.phone import go_offline, go_online, says
from tests.firm_builders import make_firm
from tests.releases.test_releases import WAITING, lost
from triage.models import JobSheet

pytestmark = pytest.mark.django_db(transaction=True)

KEPT = "**/check/hand-over/kept/**"
# What releases since 2026-11 did with the browser's own store, written out so that today's code has no part in it.
WRITE_DOWN = """(record) => new Promise((resolve, reject) => {
  const opening = indexedDB.open("oven-check", 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore("hand-overs", { keyPath: "key" });
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const transaction = opening.result.transaction("hand-overs", "readwrite");
    transaction.objectStore("hand-overs").put(record);
    transaction.oncomplete = () => { opening.result.close(); resolve(); };
    transaction.onabort = () => reject(transaction.error);
  };
})"""


def waited_on(page, firm, one):
    """The record as a phone of then holds it, written on a page of this site that runs nothing."""
    page.goto(f"{page.site}/health/")
    told = {"key": one["key"], "action": page.site + one["action"], "fields": one["fields"], "firm": firm.name}
    page.evaluate(WRITE_DOWN, {**told, "kept": 1_780_000_000_000, "trouble": [], "sent": None})


@pytest.mark.parametrize(("release", "one"), WAITING, ids=lambda told: told if isinstance(told, str) else "")
def test_what_waited_through_a_release_is_seen_and_sent_once(page, release, one):
    firm = make_firm(slug="hearth", email="", webhook_url="")
    waited_on(page, firm, one)
    page.route(KEPT, lambda route: route.abort("internetdisconnected"))
    page.goto(f"{page.site}/?region=gb-eng")
    expect(page.get_by_text("1 visit is waiting to be sent")).to_be_visible()
    assert JobSheet.objects.count() == 0, release
    page.unroute(KEPT)
    go_offline(page)
    go_online(page)
    expect(page.get_by_text("Sent from this phone")).to_be_visible()
    sheet = JobSheet.objects.get()
    says(page, f"Sent to {firm.name}. Reference {sheet.reference}.")
    assert sheet.name == dict(one["fields"])["name"]
    assert lost(dict(sheet.answers), one["keeps"]) == {}
    page.reload()
    expect(page.get_by_text("Sent from this phone")).to_be_visible()
    assert JobSheet.objects.count() == 1
    # The line that was cut, and a plain text, which has no icon.
    expected = ("ERR_INTERNET_DISCONNECTED", "404 (Not Found)")
    page.complaints[:] = [words for words in page.complaints if not any(word in words for word in expected)]

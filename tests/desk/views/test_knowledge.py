"""The page about the pack: before and after it was worked out, and when the pack has changed since."""

import pytest
from django.urls import reverse

from tests.desk.clients import make_account
from tests.reading_pages import read_page
from triage.desk.knowledge_report import report_knowledge
from triage.knowledge.library import library
from triage.models import Report

pytestmark = pytest.mark.django_db

PAGE = reverse("desk-knowledge")


@pytest.fixture
def keeper(client):
    client.force_login(make_account(is_staff=True))
    return client


def test_before_anything_is_worked_out_it_says_how(keeper):
    assert "manage.py compute_reports" in keeper.get(PAGE).content.decode()
    assert keeper.get(reverse("desk-knowledge-tree")).status_code == 404


def test_it_shows_findings_figures_plot_and_tree(keeper):
    report_knowledge(library(), "gb-eng", 8, lambda _what, _total: lambda _done: None)
    page = read_page(keeper.get(PAGE))
    assert "8 simulated checks" in page.one("main").text
    assert page.select(".plot svg")
    assert page.one("img").attributes["src"] == reverse("desk-knowledge-tree")
    assert keeper.get(reverse("desk-knowledge-tree")).headers["Content-Type"] == "image/svg+xml"
    assert "The knowledge base has changed since." not in page.one("main").text
    Report.objects.update(pack_version="older")
    assert "The knowledge base has changed since." in keeper.get(PAGE).content.decode()

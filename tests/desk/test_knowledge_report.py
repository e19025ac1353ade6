"""What the page about the pack is made of."""

from xml.etree import ElementTree

import pytest

from triage.desk.knowledge_report import report_knowledge
from triage.knowledge.library import library
from triage.models import Report


@pytest.mark.django_db
def test_everything_is_worked_out_and_says_how_far_it_has_come():
    heard = {}

    def tell(what, total):
        return lambda done: heard.update({what: (done, total)})

    kept = report_knowledge(library(), "gb-eng", 12, tell)
    told = Report.objects.get().contents
    assert (kept.pack_version, told["checks"], told["region"]) == (library().pack.version, 12, "England")
    assert heard["checks scored"] == heard["checks walked"] == (12, 12)
    assert all(done <= total for done, total in heard.values())
    assert [dict(world["rows"])["Right band"].split(",")[0].endswith("of 12") for world in told["worlds"]] == [True] * 2
    for drawing in (told["tree"], told["plot"]):
        assert ElementTree.fromstring(drawing.encode()).tag.endswith("svg")
    assert len(told["bins"]) >= 1
    for finding in told["findings"]:
        assert finding["what"]
        assert finding["remedy"]

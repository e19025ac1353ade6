"""A call at any address, read as the view reads it for an agent of a firm in England."""

from types import SimpleNamespace

import pytest

from triage.desk.call.open_call import open_call
from triage.models import Firm

SLUG = "hearth"


def asked_by(request, firm=None):
    """The request as the desk's door lets it through. The firm is in no database: a call page asks for none."""
    request.member = SimpleNamespace(firm=firm or Firm(slug=SLUG, name="Hearth Repairs", region="gb-eng"))
    return request


@pytest.fixture
def reopen(rf):
    """The call at a link of the page."""
    return lambda href, firm=None: open_call(asked_by(rf.get(href), firm))


@pytest.fixture
def call(reopen):
    """`call("complaint=no-heat", call_board="no")`: the query, and what the call adds to it."""

    def at(query="", region="gb-eng", **more):
        added = "".join(f"&{name.replace('_', '-')}={value}" for name, value in more.items())
        return reopen(f"/desk/call/?region={region}&{query}{added}")

    return at

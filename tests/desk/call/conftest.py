"""A call at any address, read as the view reads it."""

import pytest

from triage.desk.call.open_call import open_call


@pytest.fixture
def call(rf):
    """`call("complaint=no-heat", call_board="no")`: the query, and what the call adds to it."""

    def at(query="", region="gb-eng", **more):
        added = "".join(f"&{name.replace('_', '-')}={value}" for name, value in more.items())
        return open_call(rf.get(f"/call/?region={region}&{query}{added}"))

    return at

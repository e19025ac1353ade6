"""Every address of the site as an attacker lists them: opened by who may, so that there is a page to look at."""

from tests.desk.test_access import ROUTES, World
from tests.desk.who_may import token_of
from tests.household.every_page import PAGES
from tests.household.hand_overs import form_address

__all__ = ["ROUTES", "World", "every_answer"]


def every_answer(world, **headers):
    """Each kind of page and each address once, by a name: the owner's view of the desk, anybody's of the rest."""
    owner = world.clients["owner"]
    found = {f"page: {name}": owner.get(address, headers=headers) for name, address in PAGES.items()}
    found["page: form"] = owner.get(form_address(world.firm), headers=headers)
    found["page: none"] = owner.get("/no-such-page/", headers=headers)
    found["static"] = owner.get("/static/triage/css/oven.css", headers=headers)
    found["static"].getvalue()  # read to its end, its file is closed
    for name in ROUTES:
        address = world.address(name)
        if name.startswith("household-sheet"):
            address += f"?token={token_of(world.sheet)}"
        found[name] = owner.get(address, headers=headers)
    return found

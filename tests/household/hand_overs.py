"""A householder's hand-over, as a browser sends it."""

from urllib.parse import urlencode

from django.core.files.uploadedfile import SimpleUploadedFile

from tests.household.checks_done import answers_of
from tests.reading_pages import read_page

ELEMENT = answers_of("fan-element-open", "no-heat")
TYPED = {"name": "Alex Grey", "telephone": "020 7946 0000", "street": "3 Mill Lane", "agreed": "yes"}


def form_address(firm, answers=ELEMENT, region="gb-eng"):
    return f"/check/hand-over/?{urlencode({'region': region, 'firm': firm.slug, **answers})}"


def state_of(client, address):
    return read_page(client.get(address)).one('input[name="state"]').attributes["value"]


def send(client, address, *, state=None, photo=None, **changes):
    """The form filled in and sent; `photo` is the file's name and its bytes."""
    typed = {**TYPED, "state": state or state_of(client, address), **changes}
    if photo:
        typed["photo"] = SimpleUploadedFile(*photo)
    return client.post(address, {name: value for name, value in typed.items() if value is not None})

"""Everything that reads what a stranger wrote, with a few good inputs of each. A parser answers or refuses in its own
words; whatever else it raises is a mistake of ours."""

import json
from urllib.parse import urlencode
from warnings import catch_warnings, simplefilter

from django.test import RequestFactory

from tests.api.asking import body_of, booked
from tests.attack.author_parsers import author_parsers
from tests.attack.parser import Parser
from tests.attack.staff_parsers import staff_parsers
from tests.builders import electric_oven
from tests.household.hand_overs import TYPED
from tests.jobsheet.pictures import jpeg
from triage.api.job_sheet_request import MAX_BYTES, JobSheetRequest, parse_job_sheet_request
from triage.api.strict_json import read_json
from triage.check_pages.form_state import key_in, new_state
from triage.check_pages.hand_over_form import read_sent
from triage.check_pages.region import guess_region
from triage.desk.call.address import split_query
from triage.engine import parse_answers, run_check
from triage.engine.readings.encoding import InvalidReading
from triage.engine.readings.evidence import READERS
from triage.jobsheet.booking import Booking, check_booking
from triage.jobsheet.errors import Refused
from triage.jobsheet.photo import MAX_SIDE_PIXELS, read_photo
from triage.knowledge.library import library
from triage.query import MAX_PAIRS, MAX_VALUE_LENGTH, parse_query
from triage.web.json_errors import ApiError

BOUNDARY = "fuzz"
FORM = f"multipart/form-data; boundary={BOUNDARY}"
READINGS = (
    *(b"thermometer:c180~r5-20_10-95.5_15-160", b"meter:f1~s60~k1000~b100~p2200", b"meter:a12~z13~m10"),
    *(b"run-on:h30~s35", b"preheat:m22~c156.79", b"gasket:pgsggggxg"),
)


def address(data):
    asked = parse_query(data.decode("latin-1"))
    assert len(asked.pairs) <= MAX_PAIRS
    assert all(len(text) <= MAX_VALUE_LENGTH for pair in asked.pairs for text in pair)
    line, rest = split_query(asked)
    assert len(line.id) in (0, 5)
    return rest


def reading(data):
    kind, _, text = data.decode("utf-8", "replace").partition(":")
    return READERS.get(kind, READERS["meter"])(text)


def trail(data):
    """Reading a trail finds every mistake in it, and a second reading finds none in what was kept."""
    pack = electric_oven()
    found = parse_answers(pack, parse_query(data.decode("latin-1")).pairs)
    assert parse_answers(pack, found.answers.items()).answers == found.answers
    return found


def step(data):
    pairs = parse_query(data.decode("latin-1")).pairs
    return run_check(library().pack, library().regions["gb-eng"].region, pairs).step


def language(data):
    region = guess_region(data.decode("latin-1"), library().regions, "gb-eng")
    assert region in library().regions


def json_body(data):
    request = RequestFactory().generic("POST", "/", data, content_type="application/json")
    assert isinstance(parse_job_sheet_request(read_json(request, MAX_BYTES)), JobSheetRequest)


def form(data):
    sent = read_sent(RequestFactory().generic("POST", "/", data, content_type=FORM))
    if not sent.problems:
        check_booking(sent.booking("The firm may call me."))


def booking(data):
    names = ("name", "telephone", "email", "street", "access", "serial")
    texts = data.decode("utf-8", "surrogateescape").split("|")
    kept = check_booking(Booking(consent="yes", **dict(zip(names, texts, strict=False)) or {"name": ""}))
    assert "\x00" not in "".join((kept.name, kept.street, kept.access))
    "".join((kept.name, kept.street, kept.access)).encode()


def state(data):
    key = key_in(data.decode("utf-8", "surrogateescape"), "hearth")
    assert key is None or len(key) == 32


def photo(data):
    with catch_warnings():
        simplefilter("ignore", UserWarning)  # the imaging library's opinion of a broken tag, which is left out anyway
        kept = read_photo(data)
    assert max(kept.width, kept.height) <= MAX_SIDE_PIXELS


def multipart():
    fields = "".join(
        f'--{BOUNDARY}\r\nContent-Disposition: form-data; name="{name}"\r\n\r\n{value}\r\n'
        for name, value in TYPED.items()
    )
    head = f'--{BOUNDARY}\r\nContent-Disposition: form-data; name="photo"; filename="a.jpg"\r\n\r\n'
    return fields.encode() + head.encode() + b"\xff\xd8\xff\r\n" + f"--{BOUNDARY}--\r\n".encode()


def query(**answers):
    return urlencode({name.replace("_", "-"): value for name, value in answers.items()}).encode()


def parsers(folder):
    """Each by its name; files are written into `folder`."""
    trails = [
        query(region="gb-eng", complaint="no-heat", danger="none", supply_off="yes", preheat_time="m22~c156.79"),
        query(complaint="smell", smell_type="plastic-or-fishy", did_change_lamp="fixed", call_id="ABCDE"),
        query(region="fr", complaint="door", danger="none", paper_strip_test="pgsggggxg", cold="yes", cost_use="4"),
    ]
    pictures = [jpeg(16, 12), jpeg(16, 12, "PNG"), jpeg(16, 12, "WEBP", orientation=6)]
    bodies = [
        json.dumps(item).encode()
        for item in (body_of(), booked(windows=[{"start": "2031-05-26T09:00", "end": "2031-05-26T12:00"}]))
    ]
    return {
        "address": Parser(address, trails),
        "written reading": Parser(reading, READINGS, (InvalidReading,)),
        "trail": Parser(trail, trails),
        "step": Parser(step, trails),
        "Accept-Language": Parser(language, [b"en-GB,en;q=0.8,de-AT;q=0.5", b"fr", b"*;q=0.1, es-MX;q=0.9"]),
        "hand-over form": Parser(form, [multipart()], (Refused,)),
        "booking": Parser(booking, [b"Alex Grey|020 7946 0000|a@b.example|3 Mill Lane|Ring twice.|S-17"], (Refused,)),
        "JSON body": Parser(json_body, bodies, (ApiError, Refused)),
        "form state": Parser(state, [new_state("hearth").encode(), new_state("other").encode()]),
        "photo": Parser(photo, pictures, (Refused,)),
        **staff_parsers(),
        **author_parsers(folder),
    }

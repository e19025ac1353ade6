"""What the promises of speed and weight rest on, in one run: `python -m tests.bench`.

Times depend on the machine, so each is printed as a ratio to something anybody can run beside it.
"""

import os

import django

from tests.bench.authoring_speed import authoring_speed
from tests.bench.call_speed import FRAME, call_speed
from tests.bench.engine_speed import engine_speed
from tests.bench.first_visit import INITIAL_WINDOW, desk, first_page_bytes, first_visit_bytes, phone
from tests.bench.output import say
from tests.bench.page_speed import page_speed
from tests.bench.phone_page_speed import phone_page_speed
from tests.bench.phone_speed import SLOWED, phone_speed
from tests.bench.server import built_static_files, production_server, server_cost
from triage.knowledge.library import library

REGION = "gb-eng"
TRAILS, WARM_UP, PAGES, REQUESTS = 400, 150, 200, 600
CHECKS = 10_000


def main():
    os.environ["DJANGO_SETTINGS_MODULE"] = "tests.bench.settings"
    with built_static_files():
        django.setup()
        pack, region = library().pack, library().regions[REGION].region
        show_engine(pack, region)
        show_authoring(pack, region)
        show_pages(pack, region)
        show_server(pack, region)
        show_phone(pack, region)
        show_call(region)


def show_engine(pack, region):
    speed = engine_speed(pack, region, TRAILS, WARM_UP)
    say(f"Engine: {speed['hypotheses']} hypotheses, pairs included; {speed['trails']} trails of mixed length; median")
    for name in ("advise", "advise, ask", "advise, advice", "advise, make safe", "advise, slowest of twenty"):
        say(f"  {name:<34}{speed[name]:8.2f} ms")
    say(f"  {'posterior alone (believe)':<34}{speed['believe']:8.2f} ms")
    say(f"  {'posterior by pyAgrum':<34}{speed['library']:8.2f} ms")
    say(f"  {'advise / pyAgrum':<34}{speed['advise / library']:8.2f}")
    say(f"  {'believe / pyAgrum':<34}{speed['believe / library']:8.2f}")


def show_authoring(pack, region):
    speed = authoring_speed(pack, region, CHECKS)
    say(f"Author's bench: {speed['checks']} simulated checks on {speed['processors']} processors")
    say(f"  {'checks per minute':<34}{speed['per minute']:8.0f}")
    say(f"  {'one check, all processors':<34}{speed['check']:8.2f} ms")
    say(f"  {'one step of the engine, median':<34}{speed['step']:8.2f} ms")
    say(f"  {'check / step':<34}{speed['check / step']:8.2f}")


def show_pages(pack, region):
    speed = page_speed(pack, region, PAGES)
    say(f"Question page in this process, through every middleware; {speed['pages']} pages; median")
    say(f"  {'question page':<34}{speed['question']:8.2f} ms")
    say(f"  {'bare template page':<34}{speed['bare']:8.2f} ms")
    say(f"  {'question / bare':<34}{speed['question / bare']:8.2f}")


def show_server(pack, region):
    with production_server() as server:
        cost = server_cost(server, pack, region, REQUESTS)
        say(f"Under the production server, one worker; processor time per request over {REQUESTS} requests")
        say(f"  {'question page':<34}{cost['question']:8.2f} ms")
        say(f"  {'the same pages again':<34}{cost['again']:8.2f} ms")
        say(f"  {'bare template page':<34}{cost['bare']:8.2f} ms")
        say(f"  {'question / bare':<34}{cost['question / bare']:8.2f}")
        say(f"  {'again / bare':<34}{cost['again / bare']:8.2f}")
        page = first_page_bytes(server)
        with phone() as context:
            visit = first_visit_bytes(server, context)
    packed = page["html"] + page["css"]
    say(f"First page, gzip -9: html {page['html']} + css {page['css']} = {packed} bytes")
    say(f"  {'of one initial window (14,600)':<34}{packed / INITIAL_WINDOW:8.2f}")
    say(f"Everything a first visit loads: {visit['bytes']} bytes on the wire in {visit['answers']} answers")
    say(f"  {'of one initial window (14,600)':<34}{visit['bytes'] / INITIAL_WINDOW:8.2f}")


def show_phone(pack, region):
    with phone() as context:
        speed = phone_speed(context, pack, region, PAGES)
    say(f"Engine on the phone, processor slowed {SLOWED} times; {speed.pop('trails')} trails; milliseconds")
    for name, milliseconds in speed.items():
        say(f"  {name:<34}{milliseconds:8.2f} ms")
    with phone() as context:
        speed = phone_page_speed(context, pack, region, PAGES)
    say(f"Pages made on the phone, processor slowed {SLOWED} times; {speed.pop('pages')} pages; milliseconds")
    for name, milliseconds in speed.items():
        say(f"  {name:<34}{milliseconds:8.2f} ms")


def show_call(region):
    with desk() as context:
        speed = call_speed(context, region, PAGES)
    letters, lines = speed.pop("letters"), speed.pop("lines")
    say(f"Box of the call page, matching and drawing a letter; {letters} letters, up to {lines} lines; milliseconds")
    for name, milliseconds in speed.items():
        say(f"  {name:<34}{milliseconds:8.2f} ms")
    say(f"  {'one frame, to stay within':<34}{FRAME:8.2f} ms")


if __name__ == "__main__":
    main()

"""What an agent waits for at each letter typed into the box of the call page: the lines found, and their drawing.

The page's own modules, styles and words in a real browser that is not slowed, because an agent sits at a desk. A letter
counts from its event to the end of the layout; painting is the browser's own and not in it. A frame lasts 16 ms at 60
pictures a second, so what takes less is never seen to lag.
"""

import json
from pathlib import Path
from random import Random
from statistics import median
from urllib.parse import urlsplit

import triage

FRAME = 16.0  # milliseconds
SEED = 20
LONGEST = 5  # things said in one go
DESK = {"width": 1280, "height": 800}
STATIC = Path(triage.__file__).parent / "static"
KINDS = {".js": "text/javascript", ".css": "text/css"}
PAGE = """<!doctype html><html lang="en"><head><title>Calls</title>
<link rel="stylesheet" href="/static/triage/css/oven.css"><link rel="stylesheet" href="/static/triage/call/call.css">
</head><body class="desk"><p id="call-status"></p><main class="call-layout"><section class="suggestions">
<textarea id="caller-says" rows="1" data-max-length="20000">
</textarea><div id="suggestion-list" class="suggestion-list" hidden></div></section></main></body></html>"""
TIME_LETTERS = """async (sayings) => {
  const { Suggestions } = await import("/static/triage/call/suggestions.js");
  const [box, list] = ["caller-says", "suggestion-list"].map((id) => document.getElementById(id));
  const connection = { extra: () => "", save: () => {}, call: { answers: {} } };
  const suggestions = new Suggestions({ box, list, connection });
  await suggestions.fetchIndex("/words.json");
  box.focus();
  const times = [];
  let most = 0;
  for (const saying of sayings) {
    for (let typed = 1; typed <= saying.length; typed += 1) {
      box.value = saying.slice(0, typed);
      const before = performance.now();
      box.dispatchEvent(new Event("input"));
      list.getBoundingClientRect();
      times.push(performance.now() - before);
      most = Math.max(most, list.children.length);
    }
  }
  return { times, most };
}"""


def call_speed(context, region, count):
    """Milliseconds a letter, over `count` things said letter by letter, and the most lines that were drawn at once."""
    page = context.new_page()
    page.set_viewport_size(DESK)
    words = _words(region)
    page.route("**/*", lambda route: _answer(route, words))
    page.goto("http://desk.test/")
    seen = page.evaluate(TIME_LETTERS, _sayings(words, count))
    page.close()
    letters = sorted(seen["times"])
    return {
        "letters": len(letters),
        "lines": seen["most"],
        "letter": median(letters),
        "letter, slowest of twenty": letters[int(0.95 * len(letters))],
        "letter, slowest": letters[-1],
    }


def _words(region):
    # A visit is made of the site's models, so not before the bench has set Django up.
    from django.test import RequestFactory

    from triage.check_pages.request import read_check_request
    from triage.desk.call.presenters.phrase_index import build_phrase_index

    return build_phrase_index(
        read_check_request(RequestFactory(SERVER_NAME="127.0.0.1").get("/", {"region": region.id}))
    )


def _sayings(words, count):
    """What callers may say: a few phrases of the pack in one go, drawn by dice."""
    dice, phrases = Random(SEED), [phrase for row in words["answers"] for phrase in row["heard"]]
    return [", and ".join(dice.sample(phrases, dice.randint(1, LONGEST))) for _ in range(count)]


def _answer(route, words):
    path = urlsplit(route.request.url).path
    if path == "/":
        route.fulfill(body=PAGE, content_type="text/html")
    elif path == "/words.json":
        route.fulfill(body=json.dumps(words), content_type="application/json")
    else:
        file = STATIC / path.removeprefix("/static/")
        kind = KINDS.get(file.suffix)
        route.fulfill(path=file, content_type=kind) if kind and file.is_file() else route.fulfill(status=404)

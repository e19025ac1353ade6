"""The pages on the phone, as they run there: their modules in a worker of a real browser."""

import json
from contextlib import contextmanager
from itertools import chain

from django.test import Client

from tests.golden.phone_engine import address_of, phone_engine
from tests.safety.parallel import in_parallel
from tests.whole_site.project_files import ROOT
from triage.knowledge.library import library
from triage.offline.page_bundle import build_page_bundle
from triage.offline.parts import offline_pack
from triage.web.step_header import STEP

PAGES = ROOT / "triage" / "static" / "triage" / "offline" / "pages"
ORIGIN = "http://testserver"
SHARE = 50
WORKER = """import { answerPage } from "/triage/static/triage/offline/pages/answer_page.js";
import { openSite } from "/triage/static/triage/offline/pages/request.js";
const told = async (path) => (await fetch(path)).json();
addEventListener("message", async ({ data: requests }) => {
  const site = openSite(await told("/site-pack.json"), await told("/pages.json"));
  postMessage(requests.map((request) => answerPage(site, request)));
});"""
ANSWER_ALL = """async (requests) => {
  const worker = new Worker("/pages-worker.js", { type: "module" });
  const answers = await new Promise((resolve, reject) => {
    worker.onmessage = ({ data }) => resolve(data);
    worker.onerror = (event) => reject(new Error(event.message));
    worker.postMessage(requests);
  });
  worker.terminate();
  return answers;
}"""


def request_for(path, query="", fragment=True, language="en-GB", *, offline=False):
    """What the worker is asked for one address."""
    asked = {"path": path, "query": query, "fragment": fragment, "offline": offline}
    return {**asked, "language": language, "origin": ORIGIN}


OPEN_OTHER_PACK = """async () => {
  const { openSite } = await import("/triage/static/triage/offline/pages/request.js");
  const told = async (path) => (await fetch(path)).json();
  openSite({ ...(await told("/site-pack.json")), version: "another" }, await told("/pages.json"));
}"""


@contextmanager
def phone_pages(page):
    """A function that answers requests on the phone."""
    regions = [profile.region for profile in library().regions.values()]
    with phone_engine(page, library().pack, regions) as desk:
        desk.ready |= {
            **{address_of(path): path.read_bytes() for path in PAGES.rglob("*.js")},
            "/pages-worker.js": WORKER.encode(),
            "/site-pack.json": offline_pack().text.encode(),
            "/pages.json": build_page_bundle().text.encode(),
        }
        yield lambda requests: page.evaluate(ANSWER_ALL, requests)


def answers_of_the_site(requests):
    """What the server sends for the same addresses; runs in a process of its own."""
    client = Client()
    return [answer_of_the_site(client, request) for request in requests]


def answer_of_the_site(client, request):
    headers = {"Accept-Language": request["language"], **({"HX-Request": "true"} if request["fragment"] else {})}
    response = client.get(f"{request['path']}?{request['query']}", headers=headers)
    kept = ("Content-Type", "Content-Disposition", "Location", "HX-Redirect", STEP)
    return {
        "status": response.status_code,
        "html": response.content.decode(),
        "headers": {name: response.headers[name] for name in kept if name in response.headers},
    }


def differences_from_the_site(page, addresses, but_for=lambda _request, answer: answer):
    """Requests, answers of the phone, and a sentence for each page that differs; `but_for` takes out of the site's
    answer what may differ. Site and phone work at the same time."""
    requests = [request_for(*address) for address in addresses]
    shares = in_parallel(answers_of_the_site, [(requests[at : at + SHARE],) for at in range(0, len(requests), SHARE)])
    with phone_pages(page) as answer_all:
        found = answer_all(requests)
    apart = []
    for request, answer, of_the_site in zip(requests, found, chain.from_iterable(shares), strict=True):
        expected = but_for(request, of_the_site)
        if answer != expected:
            apart.append(f"{request}\n{first_difference(expected, answer)}")
    return requests, found, apart


def first_difference(expected, found):
    """Both texts around the first letter in which they differ."""
    one, other = json.dumps(expected, ensure_ascii=False), json.dumps(found, ensure_ascii=False)
    at = next((n for n, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))
    return f"site:  …{one[max(at - 80, 0) : at + 120]}\nphone: …{other[max(at - 80, 0) : at + 120]}"

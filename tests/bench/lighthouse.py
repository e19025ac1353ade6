"""What Lighthouse, a browser maker's own examiner of pages, says of the site: `python -m tests.bench.lighthouse`.

The site runs as on a server, its static files packed; each page is opened as Lighthouse does by default, on a
middle-class phone with a slow line. Scores are the median of three runs, because a busy machine shows in them.
Lighthouse is a tool of its own: `npm install --prefix .tools/lighthouse lighthouse@12.8.2` fetches it.
"""

import json
import os
import shutil
import subprocess
from statistics import median

from tests.bench.output import say
from tests.bench.server import ROOT, built_static_files, production_server
from tests.household.every_page import PAGES

PROGRAM = ROOT / ".tools" / "lighthouse" / "node_modules" / ".bin" / "lighthouse"
FETCH = "npm install --prefix .tools/lighthouse lighthouse@12.8.2"
EXAMINED = ("start", "question", "reading", "advice")
CATEGORIES = ("performance", "accessibility", "best-practices", "seo")
FLAGS = "--headless=new --no-sandbox --disable-background-networking --disable-component-update"
RUNS = 3
TRIES = 3  # a busy machine makes the browser late, and Lighthouse gives up
FULL = 100


def main():
    if not PROGRAM.exists():
        raise SystemExit(f"Lighthouse is not there. Fetch it with `{FETCH}` and try again.")
    with built_static_files(), production_server(threads=4) as server:
        server.fetch_all([PAGES[name] for name in EXAMINED])  # knowledge is read and templates are compiled
        site = f"http://{server.host}:{server.port}"
        good = [show(name, [report(site + PAGES[name]) for _ in range(RUNS)]) for name in EXAMINED]
    if not all(good):
        raise SystemExit(f"A page has less than {FULL} in some category.")


def report(address):
    """What Lighthouse says of one page, in an empty browser of its own."""
    command = [str(PROGRAM), address, "--output=json", "--quiet", f"--only-categories={','.join(CATEGORIES)}"]
    browser = shutil.which("chromium") or shutil.which("chromium-browser") or ""
    environment = {**os.environ, "CHROME_PATH": browser}
    for _ in range(TRIES):
        run = subprocess.run([*command, f"--chrome-flags={FLAGS}"], env=environment, capture_output=True, text=True)
        if run.returncode == 0:
            return json.loads(run.stdout)
    raise SystemExit(f"Lighthouse did not examine {address}:\n{run.stderr}")


def scores_of(reports):
    """The median of each category, of a hundred. A category that could not be worked out counts as nothing."""
    scores = {name: [told["categories"][name]["score"] or 0 for told in reports] for name in CATEGORIES}
    return {name: round(FULL * median(each)) for name, each in scores.items()}


def lacking(reports):
    """Each audit below 1 in the middle run, with its title and what was measured, and whether a score counts it."""
    middle = sorted(reports, key=lambda told: told["categories"]["performance"]["score"] or 0)[len(reports) // 2]
    audits = [audit for name in CATEGORIES for audit in middle["categories"][name]["auditRefs"]]
    counted = {audit["id"] for audit in audits if audit["weight"] > 0}
    for name, audit in middle["audits"].items():
        if audit["score"] is not None and audit["score"] < 1:
            mark = "counts" if name in counted else "a hint"
            yield f"{audit['score']:.2f} ({mark}) {audit['title']} {audit.get('displayValue', '')}".strip()


def show(name, reports):
    """Says both, and returns whether every score is full."""
    scores = scores_of(reports)
    say(f"{name}: " + ", ".join(f"{category} {score}" for category, score in scores.items()))
    for line in lacking(reports):
        say(f"  {line}")
    return min(scores.values()) == FULL


if __name__ == "__main__":
    main()

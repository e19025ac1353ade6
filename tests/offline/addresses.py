"""Addresses that people, browsers and forgers may ask the phone for; the same ones in every run."""

from random import Random
from urllib.parse import quote

from tests.golden.trails import chunk_of
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Question, Result, run_check
from triage.knowledge.library import library

LANGUAGES = ("en-GB,en;q=0.9", "fr-CH, fr;q=0.9, en;q=0.8", "de", "", "en-AU", "pt-BR;q=0.3,en-US;q=x", "en-iec-XX")
# Bytes that are no UTF-8, signs that stand for nothing, names that JavaScript knows, what a page must not run.
FORGED = (
    "",
    "&&=&a&=b",
    "%",
    "%zz=%e2%82&%ff%fe=%c3%28&%f0%9f%94%a5=%ed%a0%80",
    "%EF%BB%BFdanger=none",
    "a=b=c&danger=none=none",
    "danger=none&danger=NONE",
    "__proto__=constructor&constructor=__proto__&toString=1&region=__proto__",
    "region=constructor",
    "region=gb-eng&region=nowhere",
    "region=nowhere&region=us",
    "region=",
    "firm=not+a+slug%21",
    "firm=&region=fr",
    "cost-use=4&read-watts=5&danger=none",
    "%3Cscript%3Ealert(1)%3C%2Fscript%3E=%22%3E%3Cimg+src%3Dx+onerror%3Dalert(1)%3E",
    "heat-main=%3Cb%3E%26amp%3B%27%22&complaint=%253Cb%253E",
    "heat-main=%28%21%2A%27%29&unknown%2Fone=a%2Fb",
    "&".join(f"unknown-{n}=x" for n in range(12)),
    "&".join(["danger=none"] * 1001),
    "complaint=" + "%F0%9F%94%A5" * 700,
    "q" * 3000 + "=" + "é" * 3000,
)

# A question beside which a reading is named, which hardly ever comes.
BESIDE_A_READING = (
    "region=de&complaint=no-heat&danger=none&display-state=time-normal&function-pattern=cant-tell&onset=cant-tell"
    "&heating-light=light-stays-on&cutout-pattern=does-not-stop&cooking-evenness=bottom-pale&heat-main=heat-normal"
    "&preheat-time=never-gets-there&heating-system=multifunction"
)


def usual_addresses(number, seed):
    """Pages of checks as people do them, in every region, as fragments and whole."""
    pack, dice, found = library().pack, Random(seed), [("/check/", BESIDE_A_READING, True, "")]
    regions = [profile.region for profile in library().regions.values()]
    for region in regions:
        trails = [pairs for pairs, _ in chunk_of(pack, region, seed, -(-number // len(regions)), 20)]
        # The last of a chunk are whole checks, beginning by beginning; the rest is thrown.
        for pairs in dice.sample(trails, min(len(trails), -(-number // len(regions)))):
            named = [("region", region.id)] if dice.random() < 0.9 else []
            path, more = some_page(pack, dice)
            found.append((path, query_of([*named, *pairs, *more]), dice.random() < 0.9, dice.choice(LANGUAGES)))
    return found


def some_page(pack, dice):
    """A path, and the answers that belong to it alone."""
    kind = dice.choices(("step", "task", "summary", "start", "danger", "exit"), (50, 20, 12, 6, 6, 6))[0]
    if kind == "task":
        task = dice.choice(list(pack.tasks.values()))
        gates = [(gate, dice.choice(["yes", "yes", "yes", "no", "unsure"])) for gate in task.gates]
        return f"/check/task/{task.id}/", gates
    if kind == "exit":
        return f"/not-this/{dice.choice(list(library().texts['en'].start.exits))}/", []
    return {"step": "/check/", "summary": "/check/summary/", "start": "/", "danger": "/danger/"}[kind], []


def tasks_and_outcomes():
    """Checks of somebody who can tell nothing but the complaint, in two places: each task that is offered, its gates
    answered in each way, and each outcome of the first with the file to keep."""
    for region in ("gb-eng", "us"):
        for trail, tasks in untold_checks(region):
            told = [("region", region), *trail]
            for task in tasks:
                for answer in ("yes", "no", "unsure"):
                    gates = [(gate, answer) for gate in task.gates]
                    yield f"/check/task/{task.id}/", query_of([*told, *gates]), True, ""
            for outcome in (library().pack.observations[task.outcome] for task in tasks[:1]):
                for option in outcome.options:
                    yield "/check/", query_of([*told, (outcome.id, option)]), True, ""
                    yield "/check/summary/", query_of([*told, ("supply-off", "yes"), (outcome.id, option)]), False, ""


def untold_checks(region):
    """The trail and the tasks of each complaint's check once every question was answered "I can't tell"."""
    pack, place = library().pack, library().regions[region].region
    for line in pack.complaints:
        trail = [("complaint", line.option), *line.answers.items(), (SCREEN, NONE_OF_THESE)]
        while isinstance(step := run_check(pack, place, trail).step, Question):
            trail.append((step.observation, CANT_TELL))
        if isinstance(step, Result):
            yield trail, step.tasks


def forged_addresses():
    """Every forged query on every page, and pages that are not there."""
    exits = [f"/not-this/{reason}/" for reason in library().texts["en"].start.exits]
    paths = ["/", "/danger/", "/check/", "/check/summary/", "/check/task/refit-shelves/", *exits]
    found = [(path, query, True, "en-GB") for path in paths for query in FORGED]
    missing = ("/check/task/no-such-task/", "/check/task/constructor/", "/not-this/no-such-reason/")
    return found + [(path, query, whole, "fr") for path in missing for query in FORGED[:9] for whole in (True, False)]


def query_of(pairs):
    return "&".join(f"{quote(name, errors='replace')}={quote(told, errors='replace')}" for name, told in pairs)

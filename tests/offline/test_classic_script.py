"""Modules as one classic script, here the engine: whole, in order, bare, and saying in a plain worker what they say."""

import re
from hashlib import sha256

from tests.golden.kept_steps import read
from tests.golden.phone_engine import phone_engine
from tests.safety.forging import with_retired_questions
from triage.knowledge.library import library
from triage.offline.classic_script import ENGINE, joined
from triage.offline.page_script import ENTRY, PAGES

ENGINE_ENTRY = ENGINE / "check.js"

IN_A_CLASSIC_WORKER = """async (trails) => {
  const worker = new Worker("/classic.js");
  const told = await new Promise((resolve, reject) => {
    worker.onmessage = ({ data }) => resolve(data);
    worker.onerror = (event) => reject(new Error(event.message));
    worker.postMessage(trails);
  });
  worker.terminate();
  return told;
}"""
CLASSIC_WORKER = """importScripts("/engine.js");
addEventListener("message", async ({ data: trails }) => {
  const { pack, regions } = openPack(await (await fetch("/pack.json")).json());
  postMessage(trails.map(([region, pairs]) => {
    const step = advise(pack, regions.get(region), pairs);
    return [step.kind.replace("-", ""), step.observation ?? step.verdict?.causes[0].fault ?? null];
  }));
});"""


def test_every_module_is_in_what_the_pages_need_and_nothing_but_code():
    script = joined(PAGES / ENTRY).text
    functions = {
        name
        for path in ENGINE.rglob("*.js")
        for name in re.findall(r"^(?:export )?function (\w+)", path.read_text("utf-8"), re.MULTILINE)
    }
    assert functions <= set(re.findall(r"^function (\w+)", script, re.MULTILINE))
    assert re.search(r"^(import|export)\b|/\*|^\s", script, re.MULTILINE) is None


def test_each_module_stands_after_those_it_imports():
    names = re.findall(r"^function (\w+)", joined(ENGINE_ENTRY).text, re.MULTILINE)
    order = {name: place for place, name in enumerate(names)}
    assert order["sumOf"] < order["spread"] < order["openPack"] < order["believe"] < order["advise"]


def test_a_classic_worker_says_what_was_kept(page):
    lines = [line for line in read() if line["step"]["kind"] in {"Question", "Result", "OutOfScope"}]
    regions = [profile.region for profile in library().regions.values()]
    with phone_engine(page, with_retired_questions(), regions) as desk:
        desk.ready |= {"/engine.js": joined(ENGINE_ENTRY).text.encode(), "/classic.js": CLASSIC_WORKER.encode()}
        told = page.evaluate(IN_A_CLASSIC_WORKER, [[line["region"], line["trail"]] for line in lines])
    expected = [[s["kind"].lower(), (s["asks"] or s["causes"] or [None])[0]] for s in (line["step"] for line in lines)]
    assert told == expected


def test_its_version_is_made_of_its_bytes():
    script = joined(ENGINE_ENTRY)
    assert sha256(script.text.encode()).hexdigest().startswith(script.version)
    assert len(script.version) == 16

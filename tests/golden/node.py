"""The engine's other home in Node: one process, JSON lines in and out (`phone/node.js`).

Bundled first, since Node takes a module for one only where a package says so. The site itself never needs Node.
"""

import json
import subprocess
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.whole_site.project_files import ROOT
from triage.knowledge.offline_pack import build_offline_pack

ESBUILD = ROOT / ".tools" / "node_modules" / ".bin" / "esbuild"
ENTRY = Path(__file__).parent / "phone" / "node.js"


def bundled(entry, *options):
    """A module with everything it imports; throws where the tools are not there: run `.tools/install`."""
    command = [ESBUILD, entry, "--bundle", *options]
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def records_in_node(pack, regions, chunks):
    """What the engine in Node makes of each chunk of `(region, pairs)` trails."""
    lines = [build_offline_pack(pack, regions).text, *(json.dumps(chunk) for chunk in chunks)]
    with TemporaryDirectory() as folder:
        program = Path(folder) / "engine.mjs"
        program.write_text(bundled(ENTRY, "--platform=node", "--format=esm"), "utf-8")
        answered = subprocess.run(["node", program], input="\n".join(lines), capture_output=True, text=True)
    if answered.returncode:
        raise RuntimeError(f"Node ended with {answered.returncode}:\n{answered.stderr}")
    return [json.loads(line) for line in answered.stdout.splitlines()]

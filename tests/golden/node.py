"""Node, which the tests have beside the browser (`.tools/install`); the site itself never needs it."""

import subprocess

from tests.whole_site.project_files import ROOT

ESBUILD = ROOT / ".tools" / "node_modules" / ".bin" / "esbuild"


def bundled(entry):
    """A module with everything it imports, minified as the served scripts are (`.tools/build.mjs`)."""
    return subprocess.run([ESBUILD, entry, "--bundle", "--minify"], check=True, capture_output=True, text=True).stdout

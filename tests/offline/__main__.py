"""Writes the minified script of the phone's pages, after any change of a module under `static/triage/offline`.

python -m tests.offline
"""

import sys

from tests.offline.minifying import minified
from triage.offline.page_script import MINIFIED

MINIFIED.write_text(minified(), "utf-8")
sys.stdout.write(f"{MINIFIED.name} written.\n")

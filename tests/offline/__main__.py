"""Writes the minified scripts, after any change of a module under `static/triage/offline` or `static/triage/pages`.

python -m tests.offline
"""

import sys

from tests.offline.minifying import minified_files

for path, text in minified_files().items():
    path.write_text(text, "utf-8")
    sys.stdout.write(f"{path.name} written.\n")

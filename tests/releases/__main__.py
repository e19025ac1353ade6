"""`python -m tests.releases 2027-03` writes down the ids of a release, once: what is written is never changed again."""

import os
import sys
from pathlib import Path

import django
import yaml


def main(release):
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.settings")
    django.setup()
    from tests.releases.known_ids import known_ids

    folder = Path(__file__).parent / release
    folder.mkdir(exist_ok=True)
    with (folder / "ids.yaml").open("x") as file:
        yaml.safe_dump(known_ids(), file, sort_keys=False, default_flow_style=None, width=110)
    sys.stdout.write(
        f"Written for {release}. Next: add links.yaml and queued.yaml, as the releases before have them.\n"
    )


if __name__ == "__main__":
    main(sys.argv[1])

"""An installed copy has everything: the knowledge, the pages and what they load."""

import subprocess
import sys
import zipfile
from pathlib import Path

from tests.whole_site.project_files import ROOT, project_files

SHIPPED = ("triage", "site_config", "fixtures_demo")


def test_the_wheel_holds_every_file_of_its_packages(tmp_path):
    build = subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)],
        cwd=ROOT,
        capture_output=True,
        text=True,
    )
    assert build.returncode == 0, build.stderr
    (wheel,) = tmp_path.glob("*.whl")
    inside = {Path(name) for name in zipfile.ZipFile(wheel).namelist() if ".dist-info/" not in name}
    assert inside == {path for path in project_files() if path.parts[0] in SHIPPED}

"""The guide's nginx: while two releases serve side by side, a page of the one finds its files whichever is asked.

WhiteNoise lists the files when a process starts, so the old one answers 404 for a new name. `nginx -t` takes the block
as it stands (nginx 1.22, tried by hand); here it is read.
"""

import re

import pytest
from django.core.files.base import ContentFile

from site_config.static_files import SqueezedStaticFilesStorage
from tests.operations.server_guide import CODE, blocks, values
from tests.whole_site.project_files import ROOT
from triage.web.security_headers import HEADERS


def location(path):
    """What a location says, as pairs of a directive and the rest of its line."""
    (block,) = blocks("nginx")
    inside = re.search(rf"^  location {re.escape(path)} \{{(?P<lines>.*?)\}}$", block, re.MULTILINE | re.DOTALL)
    lines = re.sub(r"#.*", "", inside["lines"])
    return [tuple(line.strip().split(maxsplit=1)) for line in lines.split(";") if line.strip()]


def kept(address):
    """How long nginx lets a browser keep what is at an address, by the block's own map."""
    (block,) = blocks("nginx")
    table = re.search(r"^map \$uri \$kept \{(?P<rows>.*?)^\}", block, re.MULTILINE | re.DOTALL)["rows"]
    default = re.search(r'default "(.*)";', table)[1]
    patterns = re.findall(r'"~(.*)" "(.*)";', table)
    assert len(patterns) == 1
    return next((value for pattern, value in patterns if re.search(pattern, address)), default)


def test_static_files_come_from_the_folder_that_collectstatic_fills(settings):
    assert settings.STATIC_ROOT == ROOT / "staticfiles"
    assert values("oven-.service.d/every.conf", "WorkingDirectory") == [CODE]
    assert ("alias", f"{CODE}/staticfiles/") in location(settings.STATIC_URL)
    assert "proxy_pass" not in dict(location(settings.STATIC_URL))


@pytest.mark.parametrize("name", ["triage/css/oven.css", "triage/pages/page.min.js", "triage/icons/oven-192.png"])
def test_only_a_file_whose_name_is_made_from_its_contents_is_kept_for_long(name, tmp_path):
    hashed = SqueezedStaticFilesStorage(location=tmp_path).hashed_name(name, ContentFile(b"contents"))
    assert hashed != name
    assert kept(f"/static/{hashed}") == "public, max-age=31536000, immutable"
    assert kept(f"/static/{name}") == "public, max-age=60"


def test_static_files_keep_the_headers_that_guard_them():
    said = dict(rest.split(maxsplit=1) for name, rest in location("/static/") if name == "add_header")
    assert said["X-Content-Type-Options"] == "nosniff"
    assert said["Cache-Control"] == "$kept"
    for name in ("Cross-Origin-Resource-Policy", "Referrer-Policy"):
        assert said[name] == HEADERS[name]


def test_what_one_instance_does_not_know_the_other_is_asked_for(client):
    assert client.get("/offline/pages-0123456789abcdef.json").status_code == 404
    assert dict(location("/offline/"))["proxy_next_upstream"] == "error timeout http_404"

"""The guide's table of settings is the settings: every one, with its real default, and none that does not exist."""

import ast
import re

from tests.whole_site.project_files import ROOT
from triage.conf import SETTINGS

ROW = re.compile(r"^\| `(?P<name>[A-Z_]+)` \| (?P<default>[^|]+) \| (?P<meaning>[^|]+) \|$", re.MULTILINE)
# Their defaults are not one value: they depend on another setting, or on where the project lies.
TOLD_IN_WORDS = {
    "SECRET_KEY",
    "DATABASE_URL",
    "HTTPS_ONLY",
    "STATIC_FROM_SOURCE",
    "ALLOWED_HOSTS",
    "SECRET_KEY_FALLBACKS",
}


def rows():
    return {row["name"]: row for row in ROW.finditer((ROOT / "DEVELOPERS.md").read_text("utf-8"))}


def read_from_environment():
    """Each variable the settings read, with its default where that is one value."""
    tree = ast.parse((ROOT / "site_config" / "settings.py").read_text("utf-8"))
    calls = [
        node for node in ast.walk(tree) if isinstance(node, ast.Call) and ast.unparse(node.func).startswith("env.")
    ]
    found = {}
    for call in calls:
        if isinstance(call.args[0], ast.Constant):
            found[call.args[0].value] = next((word.value for word in call.keywords if word.arg == "default"), None)
    return found


def as_told(default):
    if isinstance(default, ast.Constant):
        value = default.value
        return "none" if value in ("", None) else f"`{int(value)}`" if isinstance(value, bool) else f"`{value}`"
    return "none"


def test_the_table_has_every_setting_and_no_other():
    assert set(rows()) == set(read_from_environment()) | {setting.name for setting in SETTINGS}


def test_each_default_is_the_real_one():
    data = {name: row["default"].strip() for name, row in rows().items()}
    for setting in SETTINGS:
        assert data[setting.name] == f"`{setting.default}`"
    for name, default in read_from_environment().items():
        if name not in TOLD_IN_WORDS:
            assert data[name] == as_told(default), name


def test_each_meaning_is_a_sentence():
    for name, row in rows().items():
        assert row["meaning"].strip().endswith("."), name
        assert not row["meaning"].startswith(" "), name

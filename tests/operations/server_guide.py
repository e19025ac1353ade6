"""The guide's "Run it on a server", taken apart: its blocks of code, its units, and what it has an operator type."""

import importlib.util
import re
import shlex

from tests.whole_site.project_files import ROOT

GUIDE = (ROOT / "DEVELOPERS.md").read_text("utf-8")
SECTION = GUIDE[GUIDE.index("## Run it on a server") : GUIDE.index("## Decisions")]
CODE = "/srv/oven-check"
SETTINGS_FILE = "/etc/oven-check.env"
COUNTS_FOLDER = "/run/oven-check"

_BLOCK = re.compile(r"^```(?P<language>\w+)\n(?P<code>.*?)^```$", re.MULTILINE | re.DOTALL)
_PROGRAM = re.compile(r"^cat > /usr/local/sbin/oven-manage <<'END'\n(?P<text>.*?)^END$", re.MULTILINE | re.DOTALL)
_UNIT = re.compile(r"^# (?P<name>oven\S+)\n(?P<text>.*?)(?=^# oven|\Z)", re.MULTILINE | re.DOTALL)


def blocks(language):
    return [found["code"] for found in _BLOCK.finditer(SECTION) if found["language"] == language]


def settings_text():
    return next(code for code in blocks("sh") if "SECRET_KEY=" in code)


def manage_program():
    """The text of `oven-manage`, by which every command gets the settings and the user."""
    return _PROGRAM.search(SECTION)["text"]


def shell_commands():
    """Each command of the shell blocks, in their order, without the text of a file that one writes."""
    shell = _PROGRAM.sub("", "\n".join(blocks("sh")))
    return [part.strip() for line in shell.splitlines() for part in line.split(" && ")]


def manage_commands():
    """What the guide has an operator type after `oven-manage`: of its blocks first, then of its sentences."""
    said = re.findall(r"`(oven-manage [^`]+)`", GUIDE)
    return [command for command in shell_commands() if command.startswith("oven-manage ")] + said


def units():
    """Each file of systemd's, by its name."""
    return {found["name"]: found["text"] for code in blocks("ini") for found in _UNIT.finditer(code)}


def values(unit, key):
    """What a unit says of one key, as often as it says it."""
    text = units()[unit].replace("\\\n", "")
    return re.findall(rf"^{key}=(.*)$", text, re.MULTILINE)


def command_of(line, port=0):
    """The words systemd makes of an `ExecStart=`."""
    return shlex.split(line.replace("%i", str(port)).replace("%%", "%"))


def programs_of_tests():
    """Every `python -m tests...` the guide names, and whether there is such a program."""
    named = sorted(set(re.findall(r"python -m (tests(?:\.\w+)*)", GUIDE)))
    return {name: importlib.util.find_spec(name) is not None for name in named}

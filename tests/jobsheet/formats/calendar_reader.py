"""Reads a calendar file by the letter of RFC 5545, and by nothing of the library that wrote it.

Lines are unfolded (3.1), a line is a name, parameters and a value (3.1's grammar), and TEXT loses its backslashes
(3.3.11); what does not fit is an error.
"""

import re
from dataclasses import dataclass, field

LINE = re.compile(
    r'(?P<name>[A-Z-]+)(?P<parameters>(?:;[A-Z-]+=(?:"[^"\x00-\x1f]*"|[^";:,\x00-\x1f]*))*):(?P<value>[^\x00-\x08\x0a-\x1f]*)'
)
PARAMETER = re.compile(r';([A-Z-]+)=(?:"([^"]*)"|([^";:,]*))')
TEXT = re.compile(r"\\([\\;,nN])|([^\\;,])", re.DOTALL)


@dataclass
class Component:
    """`values` are as they stand in the file; `parameters` those of the property of that name."""

    kind: str
    values: dict = field(default_factory=dict)
    parameters: dict = field(default_factory=dict)
    inside: list = field(default_factory=list)

    def text(self, name):
        return unescaped(self.values[name])


def read_calendar(file):
    """The calendar, with its components in order."""
    assert file.endswith("\r\n")
    lines = file.removesuffix("\r\n").split("\r\n")
    assert max(len(line.encode()) for line in lines) <= 75  # 3.1
    open_components, outermost = [], None
    for line in "\r\n".join(lines).replace("\r\n ", "").split("\r\n"):
        match = LINE.fullmatch(line)
        assert match, line
        name, value = match["name"], match["value"]
        if name == "BEGIN":
            component = Component(value)
            outermost = outermost or component
            if open_components:
                open_components[-1].inside.append(component)
            open_components.append(component)
        elif name == "END":
            assert open_components.pop().kind == value
        else:
            assert name not in open_components[-1].values, f"{name} twice"
            open_components[-1].values[name] = value
            found = PARAMETER.findall(match["parameters"])
            open_components[-1].parameters[name] = {key: quoted or plain for key, quoted, plain in found}
    assert not open_components
    return outermost


def unescaped(value):
    parts = list(TEXT.finditer(value))
    assert "".join(part[0] for part in parts) == value, value
    return "".join({"n": "\n", "N": "\n"}.get(part[1], part[1]) if part[1] else part[2] for part in parts)

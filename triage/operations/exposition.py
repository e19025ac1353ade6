"""Figures in the text exposition format of Prometheus, version 0.0.4."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

CONTENT_TYPE = "text/plain; version=0.0.4; charset=utf-8"


@dataclass(frozen=True, slots=True)
class Family:
    """Figures of one name. `samples` are the labels of each, with its value."""

    name: str
    kind: Literal["counter", "gauge"]
    help: str
    samples: Iterable[tuple[Mapping[str, str], float]]


def exposition(families: Iterable[Family]) -> str:
    return "".join(line + "\n" for family in families for line in _lines(family))


def _lines(family: Family) -> Iterable[str]:
    yield f"# HELP {family.name} {_escaped(family.help)}"
    yield f"# TYPE {family.name} {family.kind}"
    for labels, value in family.samples:
        told = ",".join(f'{name}="{_quoted(words)}"' for name, words in labels.items())
        yield f"{family.name}{{{told}}} {value:.15g}" if told else f"{family.name} {value:.15g}"


def _escaped(text: str) -> str:
    return text.replace("\\", "\\\\").replace("\n", "\\n")


def _quoted(text: str) -> str:
    return _escaped(text).replace('"', '\\"')

"""Copies of the small pack to put mistakes into, and what its author is then told."""

import shutil
from pathlib import Path

import pytest

from triage.knowledge.pack_builder import build_pack
from triage.knowledge.problems import PackProblems

HERE = Path(__file__).parent
SMALL_PACK = HERE / "small_pack"
BROKEN_PACKS = HERE / "broken_packs"


def copy_of_small_pack(folder):
    """A fresh copy inside `folder`, under the small pack's own name."""
    return Path(shutil.copytree(SMALL_PACK, folder / SMALL_PACK.name))


def broken_pack(mistake, folder):
    """A copy with the files of one mistake put over it."""
    pack = copy_of_small_pack(folder)
    for file in (BROKEN_PACKS / mistake).glob("*.yaml"):
        shutil.copy(file, pack)
    return pack


def edit(pack, name, old, new):
    """Replaces the one place where `old` stands in a file of the copy."""
    file = pack / f"{name}.yaml"
    text = file.read_text("utf-8")
    assert text.count(old) == 1
    file.write_text(text.replace(old, new), "utf-8")


def told_about(pack):
    """Every line the author of a broken pack gets to read."""
    with pytest.raises(PackProblems) as caught:
        build_pack(pack)
    return str(caught.value).splitlines()

"""A file an author asks for is written whole or not at all."""

import pytest
from django.core.management import CommandError

from triage.management.pack_commands.files import write_whole


def test_it_is_written_whole_and_nothing_is_left_beside_it(tmp_path):
    file = tmp_path / "out.xml"
    file.write_text("old and long", "utf-8")
    write_whole(file, "new")
    assert file.read_text("utf-8") == "new"
    assert list(tmp_path.iterdir()) == [file]


def test_what_cannot_be_written_is_told_and_leaves_nothing(tmp_path):
    folder = tmp_path / "folder"
    folder.mkdir()
    for path in (folder, tmp_path / "gone" / "out.xml"):
        with pytest.raises(CommandError, match="was not written: ") as refused:
            write_whole(path, "new")
        assert refused.value.returncode == 2
    assert list(tmp_path.iterdir()) == [folder]

"""A pack named by folder or by git revision; anything else is told in one sentence."""

import shutil
import subprocess

import pytest

from tests.knowledge.small_packs import SMALL_PACK, edit
from triage.authoring import revisions
from triage.authoring.revisions import NoSuchPack, pack_folder
from triage.knowledge.pack_builder import build_pack


@pytest.fixture
def kept(tmp_path):
    """A repository with the small pack in two revisions; the pack's folder as it is now."""
    git(tmp_path, "init", "-q", "-b", "main")
    (tmp_path / "readme").write_text("empty", "utf-8")
    commit(tmp_path, "nothing yet")
    pack = tmp_path / "packs" / "small_pack"
    shutil.copytree(SMALL_PACK, pack)
    commit(tmp_path, "first pack")
    edit(pack, "pack", "questions: 6", "questions: 9")
    commit(tmp_path, "more questions")
    return pack


def git(folder, *words):
    identity = ["-c", "user.name=Author", "-c", "user.email=author@oven.example", "-c", "commit.gpgsign=false"]
    subprocess.run(["git", *identity, *words], cwd=folder, check=True, capture_output=True)


def commit(folder, message):
    git(folder, "add", "--all")
    git(folder, "commit", "-q", "-m", message)


def test_a_folder_is_itself(kept):
    with pack_folder(str(kept), kept) as folder:
        assert folder == kept


def test_a_revision_is_the_pack_as_it_was_and_is_gone_afterwards(kept):
    with pack_folder("HEAD~1", kept) as folder:
        assert build_pack(folder).limits.max_questions == 6
        assert folder.name == "small_pack"
    assert not folder.exists()
    assert build_pack(kept).limits.max_questions == 9
    with pack_folder("main", kept) as folder:
        assert build_pack(folder).limits.max_questions == 9


@pytest.mark.parametrize(
    "named", ["no-such-thing", "", "--upload-pack=touch x", "-1", "HEAD~1\0", "HEAD..main", "x" * 500]
)
def test_what_is_neither_is_told_in_one_sentence(kept, named):
    with pytest.raises(NoSuchPack, match="is neither a folder nor a git revision") as refused, pack_folder(named, kept):
        pass
    assert "\n" not in str(refused.value)
    assert len(str(refused.value)) < 500


def test_a_revision_from_before_the_pack_is_told(kept):
    with (
        pytest.raises(NoSuchPack, match=r"^At HEAD~2 there was no pack at packs/small_pack\."),
        pack_folder("HEAD~2", kept),
    ):
        pass


def test_without_a_repository_or_without_git_only_folders_are_known(kept, monkeypatch, tmp_path_factory):
    outside = shutil.copytree(SMALL_PACK, tmp_path_factory.mktemp("outside") / "small_pack")
    with pytest.raises(NoSuchPack, match="does not stand in a git repository"), pack_folder("HEAD", outside):
        pass
    monkeypatch.setattr(revisions, "GIT", "no-such-program")
    with pytest.raises(NoSuchPack, match="does not stand in a git repository"), pack_folder("HEAD", kept):
        pass

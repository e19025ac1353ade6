"""A person accepts a proposal: it becomes an overlay file, whole or not at all.

The text is first read again as strictly as any overlay, laid over the pack and held against the dangers in every
region. An existing file is never written over.
"""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

from triage.engine.pack import Pack, Region
from triage.knowledge.entry import KEBAB
from triage.knowledge.overlay import danger_problems
from triage.knowledge.overlay_file import Overlay, overlay_text, with_overlay
from triage.knowledge.problems import PackProblem, PackProblems

FIRMS = "firms"
MAX_NAME_LENGTH = 100
MAX_PER_DAY = 99


def accept(
    overlay: Overlay, written: Pack, regions: Mapping[str, Region], folder: Path, accepted_by: str, day: str
) -> Path:
    """The new overlay in `folder`, or in the firm's own folder below it. Raises PackProblems; then none was written."""
    accepted_by = accepted_by.strip()
    if not accepted_by or len(accepted_by) > MAX_NAME_LENGTH or not accepted_by.isprintable():
        what = f"must be one line of 1 to {MAX_NAME_LENGTH} signs."
        raise _refused("proposal", "who", what, "Give the name of the person who accepts.")
    if overlay.firm and not KEBAB.fullmatch(overlay.firm):
        raise _refused("proposal", "firm", f"is no id: {overlay.firm!r}.", "Ids are lower-case words with hyphens.")
    text = overlay_text(replace(overlay, accepted_by=accepted_by, accepted_on=day), written)
    target = folder / FIRMS / overlay.firm if overlay.firm else folder
    try:
        _check(text, written, overlay.rules, regions)
        target.mkdir(parents=True, exist_ok=True)
        return _write(_free_path(target, day), text)
    except OSError as error:
        what = f"cannot be written: {error.strerror}."
        raise _refused(target.name, "folder", what, "Check who may write there, or give another folder.") from error


def _check(text: str, written: Pack, rules: str, regions: Mapping[str, Region]) -> None:
    with TemporaryDirectory() as folder:
        draft = Path(folder) / "proposal.yaml"
        draft.write_text(text, "utf-8")
        problems = danger_problems(written, with_overlay(written, rules, draft), regions.values(), draft.name)
    if problems:
        raise PackProblems(problems)


def _write(path: Path, text: str) -> Path:
    """Under another name first, so that a full disk leaves no half file that the site would read."""
    draft = path.with_suffix(".draft")
    try:
        draft.write_text(text, "utf-8")
        draft.replace(path)
    finally:
        draft.unlink(missing_ok=True)
    return path


def _free_path(folder: Path, day: str) -> Path:
    paths = (folder / f"{day}-{number:02d}.yaml" for number in range(1, MAX_PER_DAY + 1))
    path = next((path for path in paths if not path.exists()), None)
    if path is None:
        raise _refused(folder.name, "folder", f"has {MAX_PER_DAY} overlays of {day}.", "Delete those nobody needs.")
    return path


def _refused(file: str, where: str, what: str, remedy: str) -> PackProblems:
    return PackProblems([PackProblem(file, 1, where, what, remedy)])

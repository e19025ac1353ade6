"""A file that an author asks for."""

from pathlib import Path

from django.core.management import CommandError


def write_whole(path: Path, text: str) -> None:
    """The text in that file, whole: it is written beside and moved into place. CommandError when it cannot be."""
    beside = path.with_name(f".{path.name}.part")
    try:
        beside.write_text(text, "utf-8")
        beside.replace(path)
    except OSError as error:
        beside.unlink(missing_ok=True)
        reason = error.strerror or "it cannot be written"
        raise CommandError(
            f"{path} was not written: {reason}. Name a file in a folder that is there.", returncode=2
        ) from error

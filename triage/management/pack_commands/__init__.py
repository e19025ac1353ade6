"""The subcommands of `manage.py pack`, one module for each. They need files only: no site settings, no database.

Every module has the four names of `PackCommand`:

    NAME = "unverified"                        the word after `pack`
    HELP = "facts that ..., with whom to ask"  one line for `--help`
    add_arguments(parser)                      its arguments, `--json` among them
    run(options, out, err)                     works it out and writes it

`options` holds the parsed arguments by name; `out.write(text)` ends the line itself. Progress on anything longer than
two seconds goes to `err` (`triage.authoring.progress.Progress`), never to `out`. Whatever is wrong with what was asked
is one clear sentence with its remedy in `CommandError(..., returncode=2)`, raised before anything is written;
`PackProblems` may be let through, the command turns it into the same. Take the library from
`triage.knowledge.library.library` and a region the author names from `regions.region_named`. The command lists the
modules in `triage.management.commands.pack.COMMANDS`; add a new one there.
"""

from argparse import ArgumentParser
from collections.abc import Mapping
from typing import Any, Protocol


class Output(Protocol):
    """Where lines go: Django's wrapped standard output or standard error."""

    def write(self, msg: str) -> object: ...


class PackCommand(Protocol):
    """What the command needs from a module of this folder."""

    NAME: str
    HELP: str

    def add_arguments(self, parser: ArgumentParser) -> None: ...

    def run(self, options: Mapping[str, Any], out: Output, err: Output) -> None: ...

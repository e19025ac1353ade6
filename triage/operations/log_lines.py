"""How a log line looks, and what it never holds: an address with answers, a token, a name or a number to call.

Django names the path of a request that went wrong, and a path may be a link that is a secret; the name of the address
stands in its place. A traceback keeps where it happened and the exception's kind, and loses what the exception says: a
database that refuses a row tells the whole row. `verbose`, for a developer's own machine, keeps both.
"""

import json
import logging
import traceback
from datetime import UTC, datetime
from types import TracebackType
from typing import Any

ExceptionInfo = tuple[type[BaseException], BaseException, TracebackType | None] | tuple[None, None, None]


class RedactingFormatter(logging.Formatter):
    """Common to both: what is taken out of a line before it is written."""

    def __init__(self, *, verbose: bool = False) -> None:
        super().__init__()
        self.verbose = verbose

    def message_of(self, record: logging.LogRecord) -> str:
        path = getattr(getattr(record, "request", None), "path", None)
        if self.verbose or path is None or not isinstance(record.args, tuple):
            return record.getMessage()
        args = tuple(_view_name(record) if arg == path else arg for arg in record.args)
        return str(record.msg) % args if args else str(record.msg)

    def formatException(self, ei: ExceptionInfo) -> str:  # noqa: N802  (the library's name)
        if self.verbose:
            return super().formatException(ei)
        return "\n".join(_redacted_traceback(ei[1])) if ei[1] else ""


class TextFormatter(RedactingFormatter):
    """For a person at a terminal."""

    def format(self, record: logging.LogRecord) -> str:
        lines = [f"{record.levelname} {record.name}: {self.message_of(record)}"]
        if record.exc_info:
            lines.append(self.formatException(record.exc_info))
        return "\n".join(lines)


class JSONFormatter(RedactingFormatter):
    """One object on one line, for a program."""

    def format(self, record: logging.LogRecord) -> str:
        fields: dict[str, Any] = {
            "time": datetime.fromtimestamp(record.created, UTC).isoformat(timespec="milliseconds"),
            "level": record.levelname.lower(),
            "logger": record.name,
            "process": record.process,
            "message": self.message_of(record),
        }
        if record.exc_info:
            fields["trace"] = self.formatException(record.exc_info)
        return json.dumps(fields, ensure_ascii=False)


def _view_name(record: logging.LogRecord) -> str:
    match = getattr(record.request, "resolver_match", None)  # type: ignore[attr-defined]
    return str(match.view_name) if match else "an address that is none"


def _redacted_traceback(problem: BaseException) -> list[str]:
    """The calls and the kinds of an exception and of those it came from, the innermost first."""
    before = problem.__cause__ or (None if problem.__suppress_context__ else problem.__context__)
    frames = traceback.extract_tb(problem.__traceback__)
    lines = [f"  {frame.filename}:{frame.lineno} in {frame.name}" for frame in frames]
    kind = type(problem)
    return [*(_redacted_traceback(before) if before else []), *lines, f"{kind.__module__}.{kind.__qualname__}"]

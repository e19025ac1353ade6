"""What the phone keeps: one set of files, each with its address and hash, and a version that changes with any of them.

The worker takes a set whole or not at all, so everything a check needs stands here and nothing else does.
"""

import json
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from functools import cache
from hashlib import sha256
from pathlib import Path

from csp.utils import build_policy
from django.contrib.staticfiles import finders
from django.contrib.staticfiles.storage import ManifestFilesMixin, staticfiles_storage
from django.templatetags.static import static

import triage
from triage.offline.parts import parts
from triage.web.security_headers import HEADERS

DIGEST_LENGTH = 16
HASH_LENGTH = 32  # half a SHA-256: 128 bits still let nobody make another file of the same hash
STATIC = Path(triage.__file__).parent / "static"
STATIC_FILES = ("triage/icons/oven.svg", "triage/pages/page.min.js", "django_htmx/htmx-2.min.js")
FRAME_STYLES = "framed.css"


@dataclass(frozen=True, slots=True)
class PrecacheEntry:
    url: str
    hash: str


@dataclass(frozen=True, slots=True)
class PrecacheManifest:
    """`parts` names what the pages are made from by its role; `headers` guard a page that the phone makes itself."""

    version: str
    parts: dict[str, str]
    files: tuple[PrecacheEntry, ...]
    headers: dict[str, str]

    def as_json(self) -> str:
        return json.dumps(asdict(self), separators=(",", ":"), sort_keys=True)


@cache
def precache_manifest() -> PrecacheManifest:
    made_from = parts()
    files = (
        *(PrecacheEntry(part.url, _hash(part.text.encode())) for part in made_from.values()),
        *(PrecacheEntry(static(name), _hash(_bytes_of(name))) for name in _static_names()),
    )
    return PrecacheManifest(
        version=_version(files),
        parts={role: part.url for role, part in made_from.items()},
        files=files,
        headers=page_headers(),
    )


def page_headers() -> dict[str, str]:
    """The headers that the site's own pages have, for pages that are made on the phone."""
    return {"Content-Security-Policy": build_policy(), **HEADERS, "X-Content-Type-Options": "nosniff"}


def _static_names() -> list[str]:
    """What the pages themselves point at."""
    styles = [path for path in STATIC.glob("triage/css/*.css") if path.name != FRAME_STYLES]
    return [*STATIC_FILES, *(_name(path) for path in sorted(styles))]


def _name(path: Path) -> str:
    return path.relative_to(STATIC).as_posix()


def _bytes_of(name: str) -> bytes:
    """As it is served: `collectstatic` may have rewritten what a stylesheet points at."""
    if isinstance(staticfiles_storage, ManifestFilesMixin):
        with staticfiles_storage.open(staticfiles_storage.stored_name(name)) as file:
            return bytes(file.read())
    return _source_of(name)


def _source_of(name: str) -> bytes:
    found = finders.find(name)
    if not isinstance(found, str):
        raise FileNotFoundError(f"There is no static file {name}, which the phone is to keep.")
    return Path(found).read_bytes()


def _version(files: Iterable[PrecacheEntry]) -> str:
    lines = "\n".join(f"{file.url} {file.hash}" for file in files)
    return _hash(lines.encode())[:DIGEST_LENGTH]


def _hash(content: bytes) -> str:
    return sha256(content).hexdigest()[:HASH_LENGTH]

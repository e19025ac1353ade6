"""Pages kept in this process, ready to send: a page of a check is a pure function of its address.

Most visits ask for the same first steps, so those are worked out, rendered and compressed once. A page done for a firm
depends on what the firm has set and is never kept; nor is one whose address is so long that it hardly comes twice.
"""

import gzip
import re
from collections import OrderedDict
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import wraps
from threading import Lock
from typing import cast

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.utils.cache import get_conditional_response, patch_vary_headers

from triage.query import FIRM, REGION
from triage.web.rendering import StepRequest, wants_fragment

MOST_PAGES = 2000
LONGEST_QUERY = 400
ACCEPTS_GZIP = re.compile(r"\bgzip\b")

View = Callable[[HttpRequest], HttpResponseBase]
Key = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class KeptPage:
    """A page as it was first answered; `packed` is the same body compressed."""

    body: bytes
    packed: bytes
    headers: Mapping[str, str]


class Shelf:
    """The last `most` pages asked for; the one not asked for longest leaves first. Threads may share it."""

    def __init__(self, most: int) -> None:
        self.most = most
        self._pages: OrderedDict[Key, KeptPage] = OrderedDict()
        self._lock = Lock()

    def __len__(self) -> int:
        return len(self._pages)

    def take(self, key: Key) -> KeptPage | None:
        with self._lock:
            page = self._pages.get(key)
            if page:
                self._pages.move_to_end(key)
            return page

    def put(self, key: Key, page: KeptPage) -> None:
        with self._lock:
            self._pages[key] = page
            while len(self._pages) > self.most:
                self._pages.popitem(last=False)

    def clear(self) -> None:
        with self._lock:
            self._pages.clear()


SHELF = Shelf(MOST_PAGES)


def kept(view: View) -> View:
    """A view whose pages come from the shelf once they were made."""

    @wraps(view)
    def answer(request: HttpRequest) -> HttpResponseBase:
        key = key_of(request)
        if key is None:
            return view(request)
        page = SHELF.take(key)
        if page is None:
            made = view(request)
            if made.status_code != 200:
                return made
            page = _page_of(cast(HttpResponse, made))
            SHELF.put(key, page)
        return _send(request, page)

    return answer


def key_of(request: HttpRequest) -> Key | None:
    """What a page depends on, or None where it is not for keeping."""
    query = request.META.get("QUERY_STRING", "")
    if request.method != "GET" or len(query) > LONGEST_QUERY or f"{FIRM}=" in query:
        return None
    language = "" if f"{REGION}=" in query else request.headers.get("Accept-Language", "")
    fragment = "fragment" if wants_fragment(cast(StepRequest, request).htmx) else "page"
    return request.path, query, fragment, request.scheme or "", request.get_host(), language[:LONGEST_QUERY]


def _page_of(made: HttpResponse) -> KeptPage:
    patch_vary_headers(made, ("Accept-Encoding",))
    return KeptPage(made.content, gzip.compress(made.content, 6, mtime=0), dict(made.headers))


def _send(request: HttpRequest, page: KeptPage) -> HttpResponseBase:
    packed = bool(ACCEPTS_GZIP.search(request.headers.get("Accept-Encoding", "")))
    response = HttpResponse(page.packed if packed else page.body, headers=page.headers)
    if packed:
        # As Django's own compression does: the same page in other bytes has a weak validator.
        response.headers["Content-Encoding"] = "gzip"
        response.headers["ETag"] = f"W/{page.headers['ETag']}"
    return get_conditional_response(request, etag=response.headers["ETag"], response=response) or response

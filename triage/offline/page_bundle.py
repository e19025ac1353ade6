"""All that the pages on the phone are made of beside the pack and the script: one JSON text per language."""

import json
from dataclasses import dataclass
from functools import cache
from hashlib import sha256

from django.urls import reverse
from django.utils.translation import get_language_bidi, gettext, override

from triage.check_pages.presenters.prices import CURRENCY_SIGNS
from triage.check_pages.presenters.professional_work import PERSONS
from triage.check_pages.view_models import ISO_SIGNS
from triage.conf import DEFAULT_REGION
from triage.jobsheet.reading_text import PLACE_NAMES
from triage.jobsheet.wording import ANSWER_LABELS, NOT_SAID, SCREEN_LABEL
from triage.knowledge.library import FIRST_LANGUAGE, library
from triage.knowledge.offline_pack import DIGEST_LENGTH
from triage.offline.page_templates import PageTemplates
from triage.offline.page_texts import page_regions, page_texts

PAGES = ("start", "danger", "question", "emergency", "result", "task", "reading", "out_of_scope")
STANDALONE_PAGES = (
    *("404", "sentences/money.txt", "sentences/reading.txt", "sentences/share.txt"),
    *("summary/long.txt", "summary/unfinished.txt"),
)
# In an address, "x" stands for the name of a task or of a way out; the phone reads a star.
PARAMETRISED_ROUTES = {"task": "household-task", "reading": "household-reading", "exit": "household-exit"}
ROUTES = {
    "start": "household-start",
    "danger": "household-danger",
    "step": "household-step",
    "summary": "household-summary",
    "costs": "household-costs",
    "hand_over": "household-hand-over",
    "blank_form": "household-hand-over-blank",
}


@dataclass(frozen=True, slots=True)
class PageBundle:
    """The JSON text and its `version`, which changes with any of its bytes."""

    text: str
    version: str


@cache
def build_page_bundle(language: str = FIRST_LANGUAGE) -> PageBundle:
    """The pages in one of the languages that the pack has texts in."""
    known = library()
    with override(language):
        pages = PageTemplates(PAGES, STANDALONE_PAGES)
        content = {
            "pack": known.pack.version,  # whose order the texts stand in
            "language": language,
            "bidi": get_language_bidi(),
            "default_region": DEFAULT_REGION.value(),
            "paths": _paths(),
            "templates": pages.templates,
            "blocks": pages.blocks,
            "persons": PERSONS,
            "labels": {"screen": gettext(SCREEN_LABEL), "not_said": gettext(NOT_SAID)},
            "answer_labels": {answer: gettext(label) for answer, label in ANSWER_LABELS.items()},
            "signs": ISO_SIGNS,
            "currency_signs": CURRENCY_SIGNS,
            "seal_places": {place: str(name) for place, name in PLACE_NAMES.items()},
            "regions": page_regions(known.regions),
            "texts": page_texts(known.texts[language], known.pack),
            "costs": {"prices": known.pack.costs.prices, "call_outs": known.pack.costs.call_out_multiples},
        }
    text = json.dumps(content, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    return PageBundle(text, sha256(text.encode()).hexdigest()[:DIGEST_LENGTH])


def _paths() -> dict[str, str]:
    named = {page: "*".join(reverse(name, args=["x"]).rsplit("x", 1)) for page, name in PARAMETRISED_ROUTES.items()}
    return {page: reverse(name) for page, name in ROUTES.items()} | named

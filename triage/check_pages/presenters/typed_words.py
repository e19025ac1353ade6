"""What the first page's search box needs of the words people type: as little of them as finds the same lines.

The box looks for words that begin with what was typed (`static/triage/pages/start.js`), so each word is needed once,
and one that another begins with not at all: "trips" finds the line for "trip" too.
"""

import re

BETWEEN = re.compile(r"[\s,]+")


def typed_words(phrases: str) -> str:
    words = list(dict.fromkeys(filter(None, BETWEEN.split(phrases.lower()))))
    return " ".join(word for word in words if not any(other != word and other.startswith(word) for other in words))

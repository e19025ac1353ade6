"""What people type, made safe to store, show and send without changing what it says.

Names in any script and emoji stay as they are. Removed are characters that no writing needs and that break databases or
turn the order of a line around: controls, lone surrogates, and the overrides of direction.
"""

import re
import unicodedata

# C0 and C1 controls except line feed and tab, the direction overrides and isolates, and line separators of Unicode.
UNWANTED = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]")
LINE_BREAKS = re.compile("\r\n|\r|\u2028|\u2029")


def clean_line(text: str) -> str:
    return " ".join(clean_text(text).split())


def clean_text(text: str) -> str:
    whole = text.encode("utf-8", "replace").decode("utf-8")
    return unicodedata.normalize("NFC", UNWANTED.sub("", LINE_BREAKS.sub("\n", whole))).strip()

"""A job sheet's reference: ten signs nobody can guess, and that nobody mishears when they are said.

Thirty-two characters (no I, O, 0 or 1) give fifty bits. The words are the spelling alphabet of ICAO as printed in
SERA.14020, with its spellings Alfa, Juliett and X-ray. A reference opens nothing by itself.
"""

import re
import secrets

ALPHABET = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789"
HALF = 5

WORDS = dict(
    zip(
        "ABCDEFGHIJKLMNOPQRSTUVWXYZ23456789",
        (
            *("Alfa", "Bravo", "Charlie", "Delta", "Echo", "Foxtrot", "Golf", "Hotel", "India", "Juliett", "Kilo"),
            *("Lima", "Mike", "November", "Oscar", "Papa", "Quebec", "Romeo", "Sierra", "Tango", "Uniform", "Victor"),
            *("Whiskey", "X-ray", "Yankee", "Zulu"),
            *("Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine"),
        ),
        strict=True,
    )
)

X_RAY = re.compile(r"X[\s-]?RAY")
SAID = {word.upper().replace("-", ""): sign for sign, word in WORDS.items()} | {"ALPHA": "A", "JULIET": "J"}
MAX_TYPED_LENGTH = 120


def new_reference() -> str:
    """Such as `KD7MX-4QPTR`."""
    characters = "".join(secrets.choice(ALPHABET) for _ in range(2 * HALF))
    return f"{characters[:HALF]}-{characters[HALF:]}"


def spelled_out(reference: str) -> str:
    """The reference as it is said, with a pause in the middle."""
    return ", ".join(" ".join(WORDS[sign] for sign in half) for half in reference.split("-"))


def read_reference(typed: str) -> str | None:
    """The reference somebody typed or said, as signs or as words of the spelling alphabet, in any case and with any
    spacing; None where it cannot be one."""
    said = typed[:MAX_TYPED_LENGTH].upper()
    parts = re.split(r"[^A-Z0-9]+", X_RAY.sub("XRAY", said))
    return _grouped("".join(parts)) or _grouped("".join(SAID.get(word, word) for word in parts))


def _grouped(characters: str) -> str | None:
    if len(characters) != 2 * HALF or set(characters) - set(ALPHABET):
        return None
    return f"{characters[:HALF]}-{characters[HALF:]}"

"""How long a text takes to say, and how to part one that takes too long.

150 words a minute is a calm voice on the telephone; twenty seconds is what a worried person follows in one go.
"""

import re
from hashlib import blake2s
from math import ceil

WORDS_PER_MINUTE = 150
MAX_SECONDS = 20
MAX_WORDS = WORDS_PER_MINUTE * MAX_SECONDS // 60

_SENTENCE = re.compile(r"(?<=[.?!:])\s+")


def seconds_to_say(text: str) -> int:
    return ceil(len(text.split()) * 60 / WORDS_PER_MINUTE)


def split_for_speech(text: str) -> list[str]:
    """The text in pieces of whole sentences, each short enough to be said in one go where its sentences are."""
    pieces: list[str] = []
    for sentence in _SENTENCE.split(text.strip()):
        together = f"{pieces[-1]} {sentence}" if pieces else sentence
        if pieces and len(together.split()) <= MAX_WORDS:
            pieces[-1] = together
        else:
            pieces.append(sentence)
    return pieces


def line_id(text: str) -> str:
    """The mark that says this very text was read out; other words have another mark and must be read again."""
    return blake2s(text.encode(), digest_size=3).hexdigest()

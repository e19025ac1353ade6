"""Every compiled regular expression of the package, found by importing all of it, and texts made to hurt them."""

import importlib
import pkgutil
import re
from time import process_time

import triage

REPEATED = ("a", "1", " ", "-", ".", "\n", ",", "a ", "1,", "a.", "0123 ", "[", "<a ", "\\")
ENDINGS = ("", "!", "\n!", "1")
BEGINNINGS = ("", "https://a", '<a href="', "-")


def every_pattern():
    """Each pattern by the module and the name it has there."""
    found = {}
    for module in pkgutil.walk_packages(triage.__path__, "triage."):
        loaded = importlib.import_module(module.name)
        for name, value in vars(loaded).items():
            if isinstance(value, re.Pattern) and isinstance(value.pattern, str):
                found.setdefault(value.pattern, (f"{module.name}.{name}", value))
    return dict(found.values())


def hurtful(size):
    """Texts of this size that make a careless pattern look at every way of parting them."""
    for begin in BEGINNINGS:
        for unit in REPEATED:
            body = (unit * size)[:size]
            for end in ENDINGS:
                yield begin + body + end


def seconds(pattern, text):
    """Processor time of looking through a text in the three ways there are."""
    began = process_time()
    pattern.match(text)
    pattern.fullmatch(text)
    pattern.search(text)
    return process_time() - began

"""Modules as one script in which none of their names meet: each is a function, and what it exports is its result.

Entries run one after the other in tasks of their own, so that one that fails stops no other, as with scripts apart.
"""

import re

_STATIC = re.compile(r'^import (\{[^}]*\}) from "([^"]+)";\n', re.MULTILINE)
_DYNAMIC = re.compile(r'\bimport\("([^"]+)"\)')
_EXPORT = re.compile(r"^export (?=(?:async )?(?:function|const|class) (\w+))", re.MULTILINE)


def as_one_script(entries):
    """The list of entries in order, what they import before them."""
    names = {}
    written = [*_imported(entries, names), *(f"queueMicrotask(()=>{{{_body(entry, names)}}});" for entry in entries)]
    return f'"use strict";(()=>{{{"".join(written)}}})();'


def _imported(modules, names):
    for module in modules:
        source = module.read_text("utf-8")
        for address in [address for _, address in _STATIC.findall(source)] + _DYNAMIC.findall(source):
            other = (module.parent / address).resolve()
            if other not in names:
                yield from _imported([other], names)
                names[other] = f"module{len(names)}"
                exported = ",".join(_EXPORT.findall(other.read_text("utf-8")))
                yield f"const {names[other]}=(()=>{{{_body(other, names)}return{{{exported}}}}})();"


def _body(module, names):
    def name_of(address):
        return names[(module.parent / address).resolve()]

    source = _EXPORT.sub("", module.read_text("utf-8"))
    source = _STATIC.sub(lambda told: f"const {told[1]}={name_of(told[2])};\n", source)
    return _DYNAMIC.sub(lambda told: f"Promise.resolve({name_of(told[1])})", source)

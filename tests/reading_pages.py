"""A page as a tree that tests ask with selectors, so that no test depends on how the HTML is laid out.

`select` knows what these tests need of CSS: tag, #id, .class, [name], [name="value"], [name^="value"] and descent.
"""

import re
from dataclasses import dataclass, field
from html.parser import HTMLParser

VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}
PART = re.compile(
    r"""(?P<tag>^[a-z][a-z0-9]*)|\#(?P<id>[\w-]+)|\.(?P<cls>[\w-]+)|\[(?P<name>[\w-]+)(?:(?P<how>\^?=)"(?P<value>[^"]*)")?\]"""
)


@dataclass(eq=False)
class Element:
    tag: str
    attributes: dict[str, str]
    parent: "Element | None" = None
    children: list["Element | str"] = field(default_factory=list)

    @property
    def text(self):
        """All the words in it, with single spaces."""
        return " ".join("".join(self._words()).split())

    def _words(self):
        for child in self.children:
            if isinstance(child, str):
                yield child
            else:
                yield " "
                yield from child._words()
                yield " "

    def all(self):
        for child in self.children:
            if isinstance(child, Element):
                yield child
                yield from child.all()

    def select(self, selector):
        parts = selector.split()
        return [element for element in self.all() if element.fits(parts)]

    def one(self, selector):
        found = self.select(selector)
        assert len(found) == 1, f"{len(found)} elements are {selector}"
        return found[0]

    def fits(self, parts):
        if not self._is(parts[-1]):
            return False
        above, left = self.parent, list(parts[:-1])
        while left and above is not None:
            if above._is(left[-1]):
                left.pop()
            above = above.parent
        return not left

    def _is(self, part):
        assert "".join(match[0] for match in PART.finditer(part)) == part, f"cannot read the selector {part}"
        return all(self._has(match) for match in PART.finditer(part))

    def _has(self, match):
        if match["tag"]:
            return self.tag == match["tag"]
        if match["id"]:
            return self.attributes.get("id") == match["id"]
        if match["cls"]:
            return match["cls"] in self.attributes.get("class", "").split()
        value = self.attributes.get(match["name"])
        if match["how"] == "=":
            return value == match["value"]
        return value is not None and value.startswith(match["value"] or "")


class _Builder(HTMLParser):
    def __init__(self):
        super().__init__()
        self.root = self.here = Element("document", {})

    def handle_starttag(self, tag, attrs):
        element = Element(tag, {name: value or "" for name, value in attrs}, self.here)
        self.here.children.append(element)
        if tag not in VOID:
            self.here = element

    def handle_startendtag(self, tag, attrs):
        self.here.children.append(Element(tag, {name: value or "" for name, value in attrs}, self.here))

    def handle_endtag(self, tag):
        if tag in VOID:
            return
        assert self.here.tag == tag, f"</{tag}> closes <{self.here.tag}>"
        self.here = self.here.parent

    def handle_data(self, text):
        self.here.children.append(text)


def read_page(response):
    """The tree of a response; a tag left open or closed twice fails."""
    builder = _Builder()
    builder.feed(response.content.decode() if hasattr(response, "content") else response)
    builder.close()
    assert builder.here is builder.root, f"<{builder.here.tag}> is never closed"
    return builder.root

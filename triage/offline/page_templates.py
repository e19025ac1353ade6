"""The site's own templates as data that the phone can fill (`static/triage/offline/pages/filling.js`).

Django itself takes a template apart; here its nodes are written down, with every word in the language asked for and
every address of a file put in. So there is one source for each page, and a tag the phone does not know is refused when
the site starts and not when somebody is in the dark. Text is a string, a tag a list that begins with its letter.
"""

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any, cast

from django.template import Context, Node, NodeList
from django.template.base import FilterExpression, TextNode, Variable, VariableNode
from django.template.defaulttags import CommentNode, ForNode, IfNode, LoadNode, URLNode, WidthRatioNode, WithNode
from django.template.library import SimpleNode
from django.template.loader import get_template
from django.template.loader_tags import BlockNode, ExtendsNode, IncludeNode
from django.templatetags.i18n import (
    BlockTranslateNode,
    GetCurrentLanguageBidiNode,
    GetCurrentLanguageNode,
    TranslateNode,
)
from django.templatetags.static import PrefixNode, StaticNode
from django.utils.translation import gettext, ngettext

FOLDER = "triage"
# What no page of the phone has: a firm it is done for, and what a repairer should bring. What hangs on it is left out.
ABSENT_OFFLINE = {"firm", "firm_origins", "offer", "kit"}
FILTERS = {"lower", "length", "capfirst", "join"}
CONSTANTS = (TranslateNode, StaticNode, PrefixNode, URLNode, SimpleNode)
IGNORED = (LoadNode, CommentNode, GetCurrentLanguageNode, GetCurrentLanguageBidiNode)
OPERATORS = {"or", "and", "not", "==", "!=", "<", ">", "<=", ">="}
MAX_COUNTED = 130  # more answers than that are never read
_PLACEHOLDER = re.compile(r"%\((\w+)\)s")

NodeData = str | list[Any]


class UnsupportedInOfflineTemplate(Exception):
    """A template says something that the phone cannot fill. The message says what, and what to do."""


class PageTemplates:
    """Every fragment that some page includes, under its name, and for each page its own blocks of the base."""

    def __init__(self, pages: Iterable[str], alone: Iterable[str]) -> None:
        self.templates: dict[str, list[NodeData]] = {}
        self.blocks: dict[str, dict[str, list[NodeData]]] = {}
        for page in pages:
            self._page(page)
            self._fragment(f"_{page}")
        for page in alone:
            self._fragment(page)

    def _page(self, page: str) -> None:
        nodes = get_template(f"{FOLDER}/{page}.html").template.nodelist  # type: ignore[attr-defined]
        extends = next(node for node in nodes if isinstance(node, ExtendsNode))
        self._fragment(_name_of(extends.parent_name))
        self.blocks[page] = {name: self._nodes(block.nodelist) for name, block in extends.blocks.items()}

    def _fragment(self, name: str) -> None:
        if name not in self.templates:
            self.templates[name] = []  # so that one that includes itself ends here
            path = f"{FOLDER}/{name}" if name.endswith(".txt") else f"{FOLDER}/{name}.html"
            nodes = get_template(path).template.nodelist  # type: ignore[attr-defined]
            self.templates[name] = self._nodes(nodes)

    def _nodes(self, nodes: NodeList) -> list[NodeData]:
        """The nodes written down, neighbouring texts as one."""
        found: list[NodeData] = []
        for data in (written for node in nodes for written in self._node(node)):
            if isinstance(data, str) and found and isinstance(found[-1], str):
                found[-1] += data
            elif data:
                found.append(data)
        return found

    def _node(self, node: Node) -> list[NodeData]:
        if isinstance(node, TextNode):
            return [node.s]
        if isinstance(node, TranslateNode) and node.asvar:
            return [_remembered(node, node.asvar)]
        if isinstance(node, CONSTANTS):
            return [_constant(node)]
        if isinstance(node, IGNORED):
            return []
        writers: dict[type[Node], Callable[[Any], list[NodeData]]] = {
            VariableNode: lambda node: [["v", _expression(node.filter_expression)]],
            IfNode: self._if,
            ForNode: self._for,
            WithNode: lambda node: [["w", _named(node.extra_context), self._nodes(node.nodelist)]],
            IncludeNode: self._include,
            BlockNode: lambda node: [["b", node.name, self._nodes(node.nodelist)]],
            BlockTranslateNode: self._sentence,
            WidthRatioNode: _ratio,
        }
        if type(node) not in writers:
            raise UnsupportedInOfflineTemplate(
                f"The tag of {type(node).__name__} is not known to the phone. Write the template without it,"
                " or teach triage/offline/page_templates.py and filling.js to fill it."
            )
        return writers[type(node)](node)

    def _if(self, node: IfNode) -> list[NodeData]:
        branches: list[Any] = []
        for condition, nodes in node.conditions_nodelists:
            test = None if condition is None else _test(condition)
            if isinstance(test, str) and test in ABSENT_OFFLINE:
                continue
            branches += [self._nodes(nodes)] if condition is None else [test, self._nodes(nodes)]
        if len(branches) == 1:
            return list(branches[0])
        return [["i", *branches]] if branches else []

    def _for(self, node: ForNode) -> list[NodeData]:
        if node.is_reversed or node.nodelist_empty:
            raise UnsupportedInOfflineTemplate(
                "A loop backwards or with {% empty %} is not known to the phone. Write it with an if."
            )
        nodes = cast(NodeList, node.nodelist_loop)
        return [["f", list(node.loopvars), _expression(node.sequence), self._nodes(nodes)]]

    def _include(self, node: IncludeNode) -> list[NodeData]:
        name = _name_of(node.template)
        self._fragment(name)
        return [["u", name, _named(node.extra_context)] if node.extra_context else ["u", name]]

    def _sentence(self, node: BlockTranslateNode) -> list[NodeData]:
        """A sentence with its words left open; where it counts, every form with the rule that picks one."""
        single, _ = node.render_token_list(node.singular)
        values = _named(node.extra_context)
        if not (node.plural and node.countervar and node.counter):
            data: list[NodeData] = _with_placeholders(gettext(single), values)
        else:
            counter = values[node.countervar] = _expression(node.counter)
            plural, _ = node.render_token_list(node.plural)
            which, forms = plural_table(lambda n: ngettext(single, plural, n))
            data = [["n", counter, which, *(_with_placeholders(form, values) for form in forms)]]
        return [["s", node.asvar, data]] if node.asvar else data


def _with_placeholders(sentence: str, words: dict[str, Any]) -> list[NodeData]:
    """Its text, and what is filled in between: a word of its own as the expression it stands for."""
    return [part if text else ["v", words.get(part, part)] for part, text in split_placeholders(sentence)]


def _constant(node: Node) -> str:
    """The same on every page, so it is written out now."""
    return str(node.render_annotated(Context({})))


def _remembered(node: TranslateNode, name: str) -> list[Any]:
    """A text that the template keeps under a name, for a sentence that stands further on."""
    context = Context({})
    node.render_annotated(context)
    return ["s", name, [str(context[name])]]


def _named(expressions: dict[str, FilterExpression]) -> dict[str, Any]:
    return {name: _expression(expression) for name, expression in expressions.items()}


def _name_of(expression: FilterExpression | Node) -> str:
    name = getattr(expression, "var", None)
    if not isinstance(name, str):
        raise UnsupportedInOfflineTemplate(
            "A template included by a name worked out is not known to the phone. Name it."
        )
    return name.removeprefix(f"{FOLDER}/").removesuffix(".html")


def _expression(expression: FilterExpression | str) -> Any:
    """A path ("page.heading") with its filters, or what is meant as it stands."""
    if isinstance(expression, str):
        return _literal(expression)
    if not isinstance(expression.var, Variable):
        return _literal(str(expression.var))
    if expression.var.lookups is None:
        return _literal(expression.var.literal)
    if expression.var.translate:
        raise UnsupportedInOfflineTemplate(
            f"The translation of {expression.token} is not known to the phone. Write it with translate."
        )
    path = ".".join(expression.var.lookups)
    filters = [_filter(expression, function.__name__, arguments) for function, arguments in expression.filters]
    return path == "True" if path in ("True", "False") else "|".join([path, *filters])


def _literal(value: Any) -> Any:
    """What is meant as it stands: a text begins with "=", a number is itself."""
    return f"={value}" if isinstance(value, str) else value


def _filter(expression: FilterExpression, name: str, arguments: Sequence[tuple[bool, Any]]) -> str:
    """Its name, with what stands behind a colon in the template, which is a text of one's own."""
    texts = [] if any(is_looked_up for is_looked_up, _ in arguments) else [str(text) for _, text in arguments]
    if name not in FILTERS or len(texts) < len(arguments) or any(sign in text for text in texts for sign in "|:"):
        raise UnsupportedInOfflineTemplate(
            f"The filters of {expression.token} are not known to the phone. It knows {sorted(FILTERS)}."
        )
    return ":".join([name, *texts])


def _test(condition: Any) -> Any:
    if condition.id == "literal":
        return _expression(condition.value)
    if condition.id not in OPERATORS:
        raise UnsupportedInOfflineTemplate(
            f"The test “{condition.id}” is not known to the phone. It knows {sorted(OPERATORS)}."
        )
    sides = [condition.first, condition.second]
    return [condition.id, *(_test(side) for side in sides if side is not None)]


def _ratio(node: WidthRatioNode) -> list[NodeData]:
    most, width = (float(str(e.resolve(Context({})))) for e in (node.max_expr, node.max_width))
    return [["r", _expression(node.val_expr), most, width]]


def plural_table(form_for: Callable[[int], str]) -> tuple[str, list[str]]:
    """A digit for each count from nothing up, and the forms the digits stand for. The last digit counts for more."""
    every = [form_for(n) for n in range(MAX_COUNTED)]
    forms = list(dict.fromkeys(every))
    return _shortest("".join(str(forms.index(form)) for form in every)), forms


def _shortest(digits: str) -> str:
    return digits.rstrip(digits[-1]) + digits[-1]


def split_placeholders(sentence: str) -> Iterator[tuple[str, bool]]:
    """The text of a sentence and the names of the words left open in it, by turns; true for text."""
    for at, part in enumerate(_PLACEHOLDER.split(sentence)):
        if part:
            yield (part if at % 2 else part.replace("%%", "%")), at % 2 == 0

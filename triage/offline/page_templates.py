"""The site's own templates as data that the phone can fill (`static/triage/offline/pages/filling.js`).

Django itself takes a template apart; here its nodes are written down, with every word in the language asked for and
every address of a file put in. So there is one source for each page, and a tag the phone does not know is refused when
the site starts and not when somebody is in the dark. Text is a string, a tag a list that begins with its letter.
"""

from collections.abc import Callable, Iterable
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

from triage.offline.sentences import counted_forms, parts_of_sentence

FOLDER = "triage"
# What no page of the phone has: a firm it is done for. What hangs on it is left out.
ABSENT = {"firm", "firm_origins", "offer"}
FILTERS = {"lower", "length"}
CONSTANTS = (TranslateNode, StaticNode, PrefixNode, URLNode, SimpleNode)
SILENT = (LoadNode, CommentNode, GetCurrentLanguageNode, GetCurrentLanguageBidiNode)
TESTS = {"or", "and", "not", "==", "!=", "<", ">", "<=", ">="}

Told = str | list[Any]


class NotForThePhone(Exception):
    """A template says something that the phone cannot fill. The message says what, and what to do."""


class PageTemplates:
    """Every fragment that some page includes, under its name, and for each page its own blocks of the base."""

    def __init__(self, pages: Iterable[str], alone: Iterable[str]) -> None:
        self.templates: dict[str, list[Told]] = {}
        self.blocks: dict[str, dict[str, list[Told]]] = {}
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
            nodes = get_template(f"{FOLDER}/{name}.html").template.nodelist  # type: ignore[attr-defined]
            self.templates[name] = self._nodes(nodes)

    def _nodes(self, nodes: NodeList) -> list[Told]:
        """The nodes written down, neighbouring texts as one."""
        found: list[Told] = []
        for told in (told for node in nodes for told in self._node(node)):
            if isinstance(told, str) and found and isinstance(found[-1], str):
                found[-1] += told
            elif told:
                found.append(told)
        return found

    def _node(self, node: Node) -> list[Told]:
        if isinstance(node, TextNode):
            return [node.s]
        if isinstance(node, TranslateNode) and node.asvar:
            return [_remembered(node, node.asvar)]
        if isinstance(node, CONSTANTS):
            return [_constant(node)]
        if isinstance(node, SILENT):
            return []
        writers: dict[type[Node], Callable[[Any], list[Told]]] = {
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
            raise NotForThePhone(
                f"The tag of {type(node).__name__} is not known to the phone. Write the template without it,"
                " or teach triage/offline/page_templates.py and filling.js to fill it."
            )
        return writers[type(node)](node)

    def _if(self, node: IfNode) -> list[Told]:
        branches: list[Any] = []
        for condition, nodes in node.conditions_nodelists:
            told = None if condition is None else _test(condition)
            if isinstance(told, str) and told in ABSENT:
                continue
            branches += [self._nodes(nodes)] if condition is None else [told, self._nodes(nodes)]
        if len(branches) == 1:
            return list(branches[0])
        return [["i", *branches]] if branches else []

    def _for(self, node: ForNode) -> list[Told]:
        if node.is_reversed or node.nodelist_empty:
            raise NotForThePhone("A loop backwards or with {% empty %} is not known to the phone. Write it with an if.")
        nodes = cast(NodeList, node.nodelist_loop)
        return [["f", list(node.loopvars), _expression(node.sequence), self._nodes(nodes)]]

    def _include(self, node: IncludeNode) -> list[Told]:
        name = _name_of(node.template)
        self._fragment(name)
        told: list[Told] = [["u", name]]
        return [["w", _named(node.extra_context), told]] if node.extra_context else told

    def _sentence(self, node: BlockTranslateNode) -> list[Told]:
        """A sentence with its words left open; where it counts, every form with the rule that picks one."""
        single, _ = node.render_token_list(node.singular)
        words = _named(node.extra_context)
        if not (node.plural and node.countervar and node.counter):
            told: list[Told] = _open_words(gettext(single), words)
        else:
            counter = words[node.countervar] = _expression(node.counter)
            plural, _ = node.render_token_list(node.plural)
            which, forms = counted_forms(lambda n: ngettext(single, plural, n))
            told = [["n", counter, which, *(_open_words(form, words) for form in forms)]]
        return [["s", node.asvar, told]] if node.asvar else told


def _open_words(sentence: str, words: dict[str, Any]) -> list[Told]:
    """Its text, and what is filled in between: a word of its own as the expression it stands for."""
    return [part if text else ["v", words.get(part, part)] for part, text in parts_of_sentence(sentence)]


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
        raise NotForThePhone("A template included by a name worked out is not known to the phone. Name it.")
    return name.removeprefix(f"{FOLDER}/").removesuffix(".html")


def _expression(told: FilterExpression | str) -> Any:
    """A path ("page.heading") with its filters, or what is meant as it stands."""
    if isinstance(told, str):
        return {"is": told}
    if not isinstance(told.var, Variable):
        return {"is": str(told.var)}
    if told.var.lookups is None:
        return {"is": told.var.literal}
    filters = [function.__name__ for function, _ in told.filters]
    if not set(filters) <= FILTERS or told.var.translate:
        raise NotForThePhone(f"The filters of {told.token} are not known to the phone. It knows {sorted(FILTERS)}.")
    path = ".".join(told.var.lookups)
    return {"is": path == "True"} if path in ("True", "False") else "|".join([path, *filters])


def _test(condition: Any) -> Any:
    if condition.id == "literal":
        return _expression(condition.value)
    if condition.id not in TESTS:
        raise NotForThePhone(f"The test “{condition.id}” is not known to the phone. It knows {sorted(TESTS)}.")
    sides = [condition.first, condition.second]
    return [condition.id, *(_test(side) for side in sides if side is not None)]


def _ratio(node: WidthRatioNode) -> list[Told]:
    most, width = (float(str(e.resolve(Context({})))) for e in (node.max_expr, node.max_width))
    return [["r", _expression(node.val_expr), most, width]]

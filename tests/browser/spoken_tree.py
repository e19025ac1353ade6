"""What a screen reader is given: the browser's own accessibility tree, in the order in which it is read."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Node:
    role: str
    name: str
    told: dict  # focused, level, live and the like, as the browser tells them
    words: str  # everything written in it


def spoken(page):
    """Every node that is not left out, in reading order."""
    session = page.context.new_cdp_session(page)
    nodes = {node["nodeId"]: node for node in session.send("Accessibility.getFullAXTree")["nodes"]}
    session.detach()
    (root,) = [node for node in nodes.values() if "parentId" not in node]
    return list(walk(nodes, root))


def walk(nodes, node):
    if not node["ignored"]:
        told = {one["name"]: one["value"].get("value") for one in node.get("properties", [])}
        yield Node(node["role"]["value"], node.get("name", {}).get("value", ""), told, words_of(nodes, node))
    for child in node.get("childIds", []):
        yield from walk(nodes, nodes[child])


def words_of(nodes, node):
    if node["role"]["value"] == "StaticText":
        return node["name"]["value"]
    return " ".join(" ".join(words_of(nodes, nodes[child]) for child in node.get("childIds", [])).split())


def of_main(tree):
    """What stands between the top of the page and the way out, without the text inside each."""
    roles = [node.role for node in tree]
    below = next(at for at, node in enumerate(tree) if node.name == "Way out")
    return tree[roles.index("main") + 1 : below]


def names(nodes, *roles):
    return [node.name for node in nodes if node.role in roles]

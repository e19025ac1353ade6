"""What every page of a check has to stand: day, night, forced colours, a narrow phone, text of double size, a thumb.

Pictures of it go to `.shots/`, which git ignores, for a person to look at.
"""

from axe_playwright_python.base import AXE_SCRIPT

from tests.whole_site.project_files import ROOT

PHONE, DESK = (360, 740), (1280, 800)
SCHEMES = ("light", "dark")
SHOTS = ROOT / ".shots"
UNFOLD = "document.querySelectorAll('details').forEach(details => { details.open = true })"
# Screen, colours, forced colours, size of text: each way of looking once.
WAYS = (
    (PHONE, "light", "none", "100%"),
    ((320, 640), "dark", "none", "100%"),
    (PHONE, "light", "active", "100%"),
    (PHONE, "light", "none", "200%"),
)
# axe-core's rules whose answer depends on colours and sizes; every other rule reads the page alone and is asked once.
ON_LOOKS = {
    "type": "rule",
    "values": ["color-contrast", "link-in-text-block", "scrollable-region-focusable", "target-size"],
}
WCAG = {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}
USUAL = {"type": "tag", "values": [*WCAG["values"], "best-practice"]}
FIND = """async (runOnly) => {
  const { violations } = await axe.run({ runOnly, resultTypes: ["violations"] });
  return violations.map((one) => `${one.id}: ${one.nodes[0].html}`);
}"""
FITS = "document.documentElement.scrollWidth <= document.documentElement.clientWidth"
WAY_OUT = "Danger? Stop here"
THUMB = 48
# What is smaller than a thumb in either direction. Not counted: what nobody sees (hidden, folded away, or off the left
# edge until it has focus), and a link within a sentence, as WCAG 2.5.8 says: one that is laid out inline, as words are,
# and whose own parent has words beside it that are not a link.
TOO_SMALL = """(thumb) => {
  const beside = (link) => [...link.parentElement.childNodes].some(
    (node) => node.nodeType === Node.TEXT_NODE && node.textContent.trim());
  const inSentence = (e) => e.tagName === "A" && getComputedStyle(e).display === "inline" && beside(e);
  return [...document.querySelectorAll("a, button, summary, select, label:has(input)")]
    .filter((e) => e.checkVisibility({ visibilityProperty: true }) && !inSentence(e))
    .map((e) => [e.textContent.trim().slice(0, 40), e.getBoundingClientRect()])
    .filter(([, box]) => box.right > 0 && Math.min(box.width, box.height) < thumb - 0.01)
    .map(([words, box]) => `${words}: ${box.width.toFixed(1)} x ${box.height.toFixed(1)}`);
}"""


def barriers(page, rules=USUAL):
    """What axe-core finds on the page by these rules; the program is put into the page once."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE_SCRIPT)
    return page.evaluate(FIND, rules)


def assert_no_barriers_by_day_and_night(page, rules=USUAL):
    for scheme, asked in (("light", rules), ("dark", ON_LOOKS)):
        page.emulate_media(color_scheme=scheme)
        assert barriers(page, asked) == [], scheme


def set_screen(page, size):
    page.set_viewport_size({"width": size[0], "height": size[1]})


def examine(page, way_out=WAY_OUT):
    """Everything unfolded, in each way of looking; `way_out` is "" where there is none, as on the desk."""
    page.evaluate(UNFOLD)
    for rules, (size, scheme, forced, text) in zip((USUAL, *[ON_LOOKS] * 3), WAYS, strict=True):
        set_screen(page, size)
        page.emulate_media(color_scheme=scheme, forced_colors=forced)
        page.evaluate("(text) => { document.documentElement.style.fontSize = text }", text)
        assert page.evaluate(FITS), (size, text)
        assert is_in_reach(page, way_out, size), (size, text)
        assert barriers(page, rules) == [], (size, scheme, forced, text)
    page.evaluate("document.documentElement.style.fontSize = ''")
    assert too_small(page) == []
    set_screen(page, DESK)
    assert page.evaluate(FITS), DESK
    assert is_in_reach(page, way_out, DESK)


def too_small(page, thumb=THUMB):
    return page.evaluate(TOO_SMALL, thumb)


def is_in_reach(page, link, size):
    if not link:
        return True
    box = page.get_by_role("link", name=link).bounding_box()
    return box["y"] >= 0 and box["y"] + box["height"] <= size[1]


def take_pictures(page, name, of=None):
    """By page, screen and colours; from the top, or from the element a selector names."""
    for size in (PHONE, DESK):
        set_screen(page, size)
        for scheme in SCHEMES:
            page.emulate_media(color_scheme=scheme)
            page.evaluate("(of) => of ? document.querySelector(of).scrollIntoView() : window.scrollTo(0, 0)", of)
            path = SHOTS / f"{name.replace(' ', '-')}-{size[0]}x{size[1]}-{scheme}.png"
            page.screenshot(path=path, scale="css")
            assert path.stat().st_size > 0

"""A browser reads a stylesheet as production sends it exactly as it reads it as its author wrote it."""

from pathlib import Path

from rcssmin import cssmin

import triage

SHEETS = sorted((Path(triage.__file__).parent / "static").rglob("*.css"))
# A value with a variable in it is kept as text, so a space after a comma is still to be seen there.
RULES = r"""text => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(text);
  return [...sheet.cssRules].map((rule) => rule.cssText.replaceAll(/,\s+/g, ","));
}"""


def test_every_stylesheet_means_the_same_with_fewer_letters(page):
    assert len(SHEETS) > 5
    for sheet in SHEETS:
        written = sheet.read_text("utf-8")
        rules = page.evaluate(RULES, written)
        assert len(rules) > 3, sheet.name
        assert page.evaluate(RULES, cssmin(written)) == rules, sheet.name

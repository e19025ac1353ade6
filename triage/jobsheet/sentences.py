"""Texts that are said in more places than on a page: in JSON, on a job sheet, by an agent.

A sentence is a template of its own under `templates/triage/sentences/`, a summary one under
`templates/triage/summary/`. Pages include them, so they are worded once. The files end without a line break, because
a sentence has none.
"""

from django.template import Context, Engine


def plain_text(template: str, **facts: object) -> str:
    """What a template says of these facts, as plain text: nothing in it is escaped, so a page that shows it has to."""
    text = Engine.get_default().get_template(f"triage/{template}.txt").render(Context(facts, autoescape=False))
    return text + ""  # Django takes whatever it rendered for safe HTML; a plain string is none


def sentence(name: str, **facts: object) -> str:
    return plain_text(f"sentences/{name}", **facts)

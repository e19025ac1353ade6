"""A sentence is plain text: as it was given, and never taken for HTML by a page that shows it."""

from django.template import Context, Template
from django.utils.safestring import SafeData

from triage.jobsheet.sentences import sentence


def test_a_sentence_is_said_as_it_is_and_escaped_by_the_page_that_shows_it():
    said = sentence("money", low="<b>1</b>", high="2 & 3")
    assert said == "about <b>1</b> to 2 & 3"
    assert not isinstance(said, SafeData)
    assert Template("{{ said }}").render(Context({"said": said})) == "about &lt;b&gt;1&lt;/b&gt; to 2 &amp; 3"

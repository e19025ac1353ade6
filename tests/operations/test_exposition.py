"""The text is what Prometheus' own client library for Python reads (exposition format 0.0.4)."""

from prometheus_client.parser import text_string_to_metric_families

from triage.operations.exposition import Family, exposition

AWKWARD = 'a "quoted" \\ line\nand another'


def test_the_reference_parser_reads_back_what_was_told():
    told = [
        Family("steps_total", "counter", AWKWARD, [({"kind": "question", "worker": AWKWARD}, 3), ({}, 12345678901)]),
        Family("age_seconds", "gauge", "How old.", [({}, 0.25)]),
    ]
    steps, age = text_string_to_metric_families(exposition(told))
    assert (steps.name, steps.type, steps.documentation) == ("steps", "counter", AWKWARD)
    assert [(s.name, s.labels, s.value) for s in steps.samples] == [
        ("steps_total", {"kind": "question", "worker": AWKWARD}, 3),
        ("steps_total", {}, 12345678901),
    ]
    assert (age.type, age.samples[0].value) == ("gauge", 0.25)


def test_nothing_to_tell_is_an_empty_page():
    assert exposition([]) == ""

"""Several worker processes: whichever is asked, the counts are those of all of them."""

from urllib.request import urlopen

from prometheus_client.parser import text_string_to_metric_families

from tests.operations.production import production


def test_every_step_of_every_worker_is_counted_once(tmp_path):
    with production(tmp_path, workers=2) as site:
        for number in range(40):
            with urlopen(f"{site.url}/?region=gb-eng&x={number}", timeout=20) as response:
                response.read()
        totals = [total_of(site) for _ in range(6)]
    assert totals == [40] * 6


def total_of(site):
    with urlopen(f"{site.url}/metrics/", timeout=20) as response:
        families = text_string_to_metric_families(response.read().decode())
    steps = next(family for family in families if family.name == "oven_check_steps")
    return sum(sample.value for sample in steps.samples if sample.labels["kind"] == "start")

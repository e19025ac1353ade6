"""One stretch of load as it is told: rate, waits, what it cost, and the ratio to something bare."""

from dataclasses import dataclass

from tests.bench.driver import drive
from tests.bench.output import say


@dataclass(frozen=True)
class Measured:
    """What the second process saw; `site_cpu` and `database_cpu` are seconds, where they were read."""

    seen: dict
    site_cpu: float | None = None
    database_cpu: float | None = None

    @property
    def count(self):
        return len(self.seen["waits"])

    @property
    def rate(self):
        return self.count / self.seen["seconds"]

    @property
    def cost(self):
        """Milliseconds of the workers' processor time a request."""
        return None if self.site_cpu is None else 1000 * self.site_cpu / self.count

    @property
    def whole_cost(self):
        """The same with the database's, in seconds."""
        return (self.site_cpu + (self.database_cpu or 0)) / self.count

    def wait(self, share):
        """Milliseconds within which this share of requests was answered."""
        waits = self.seen["waits"]
        return 1000 * waits[min(len(waits) - 1, int(share * len(waits)))]

    @property
    def unwell(self):
        """Answers that were none, and requests that got none."""
        bad = sum(count for status, count in self.seen["statuses"].items() if status not in ("200", "201"))
        return bad + sum(self.seen["cuts"].values())


def measured(site, requests, seconds, server=None):
    """The requests sent as fast as they are answered. Raises RuntimeError where any of them fails."""
    before = site.cpu_seconds(), server.cpu_seconds() if server else 0.0
    seen = drive([(site.host, site.port)], requests, seconds)
    after = site.cpu_seconds(), server.cpu_seconds() if server else 0.0
    found = Measured(seen, after[0] - before[0], after[1] - before[1] if server else None)
    if found.unwell or not found.count:
        raise RuntimeError(f"Requests failed: {seen['statuses']} {seen['cuts']}\n{site.said()}")
    return found


def show(name, found, beside=None, called="bare page"):
    say(f"{name}: {found.count} in {found.seen['seconds']:.1f} s, {found.unwell} failed")
    say(f"  {'a second':<34}{found.rate:8.0f}")
    say(f"  {'p50, p95, p99':<34}{found.wait(0.5):8.1f} {found.wait(0.95):8.1f} {found.wait(0.99):8.1f} ms")
    if found.cost is not None:
        say(f"  {'processor time, workers':<34}{found.cost:8.2f} ms")
    if found.database_cpu is not None:
        say(f"  {'processor time, database':<34}{1000 * found.database_cpu / found.count:8.2f} ms")
    if beside:
        say(f"  {'rate / ' + called:<34}{found.rate / beside.rate:8.2f}")
        say(f"  {'workers / ' + called:<34}{found.cost / beside.cost:8.2f}")


def show_memory(site, requests):
    """What the workers hold before, on the way, and at the end of so many requests."""
    place, quarter = [(site.host, site.port)], len(requests) // 4
    held = [site.megabytes()]
    for part in range(4):
        drive(place, requests[part * quarter : (part + 1) * quarter], 900)
        held.append(site.megabytes())
    say(f"Memory of each worker over {4 * quarter} requests, an hour's worth at {4 * quarter / 3600:.0f} a second")
    for name, workers in zip(("before", "a quarter", "half", "three quarters", "all of them"), held, strict=True):
        say(f"  {name:<34}{'  '.join(f'{worker:.1f}' for worker in workers)} MB")
    say(f"  {'all / half':<34}{sum(held[4]) / sum(held[2]):8.3f}")

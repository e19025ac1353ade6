"""One step of the phone's engine in a real browser whose processor is slowed down, as a cheap phone's is.

The slowing is Chromium's own (`Emulation.setCPUThrottlingRate`) and works on the page's thread, so the engine runs
there and not in a worker. The first step still has to compile the model of its region.
"""

from statistics import median

from tests.bench.sessions import trails
from tests.golden.phone_engine import phone_engine

SLOWED = 4
TIME_ALL = 'async (trails) => (await import("/tests/golden/phone/recording.js")).timeAll(trails)'


def phone_speed(context, pack, region, count):
    """Milliseconds in the slowed browser."""
    measured = trails(pack, region, count, "phone")
    page = context.new_page()
    with phone_engine(page, pack, [region]):
        context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
        times = page.evaluate(TIME_ALL, [[region.id, list(trail)] for trail in measured])
    steps = sorted(times["steps"])
    return {
        "trails": len(measured),
        "opening the pack": times["opening"],
        "first step, model compiled": times["first"],
        "step": median(steps),
        "step, slowest of twenty": steps[int(0.95 * len(steps))],
        "step, slowest": steps[-1],
    }

"""One page made on the phone, in a real browser whose processor is slowed down: the step, its texts and its HTML.

What a tap waits for there, but for the swap. The first page still has to fill in the region's words and compile its
model.
"""

from statistics import median

from tests.bench.phone_speed import SLOWED
from tests.bench.sessions import trails
from tests.offline.addresses import query_of

TIME_PAGES = """async (requests) => {
  const { answerPage } = await import("/triage/static/triage/offline/pages/answer_page.js");
  const { openSite } = await import("/triage/static/triage/offline/pages/request.js");
  const told = async (path) => (await fetch(path)).text();
  const [pack, pages] = await Promise.all([told("/site-pack.json"), told("/pages.json")]);
  const start = performance.now();
  const site = openSite(JSON.parse(pack), JSON.parse(pages));
  const opened = performance.now();
  const times = requests.map((request) => {
    const before = performance.now();
    answerPage(site, request);
    return performance.now() - before;
  });
  return { opening: opened - start, first: times[0], pages: times.slice(1) };
}"""


def phone_page_speed(context, pack, region, count):
    """Milliseconds in the slowed browser."""
    # Pages are made of the site's models, so not before the bench has set Django up.
    from tests.offline.phone_pages import phone_pages, request_for

    requests = [
        request_for("/check/", query_of([("region", region.id), *trail]))
        for trail in trails(pack, region, count, "pages")
    ]
    page = context.new_page()
    with phone_pages(page):
        context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
        times = page.evaluate(TIME_PAGES, requests)
    pages = sorted(times["pages"])
    return {
        "pages": len(requests),
        "opening pack and pages": times["opening"],
        "first page, model compiled": times["first"],
        "page": median(pages),
        "page, slowest of twenty": pages[int(0.95 * len(pages))],
        "page, slowest": pages[-1],
    }

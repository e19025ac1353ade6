"""A phone with the check on it: opened once online, then offline; and what its worker kept."""

from playwright.sync_api import expect

CONTROLLED = "() => navigator.serviceWorker.controller !== null"
SETS = "async () => (await caches.keys()).filter((name) => name.startsWith('oven-check-set-'))"
POLL = 50
POLLS = 600


def install(page, address="/?region=gb-eng"):
    """The first visit, until the worker answers."""
    page.goto(f"{page.site}{address}")
    page.wait_for_function(CONTROLLED)


def until(page, question):
    """Waits until an asynchronous expression is true; Playwright's own wait takes the promise itself for a yes."""
    for _ in range(POLLS):
        if page.evaluate(question):
            return
        page.wait_for_timeout(POLL)
    raise AssertionError(f"never came true: {question}")


def stop_worker(page):
    session = page.context.new_cdp_session(page)
    session.send("ServiceWorker.enable")
    session.send("ServiceWorker.stopAllWorkers")


def let_old_worker_rest(page):
    """Stops the worker that is in charge, as a phone does with one that is idle; one that is watched never is."""
    session = page.context.new_cdp_session(page)
    versions = []
    session.on("ServiceWorker.workerVersionUpdated", lambda told: versions.extend(told["versions"]))
    session.send("ServiceWorker.enable")
    for _ in range(POLLS):
        if any(version["status"] == "activated" for version in versions):
            break
        page.wait_for_timeout(POLL)
    for version in versions:
        if version["status"] == "activated" and version["runningStatus"] == "running":
            session.send("ServiceWorker.stopWorker", {"versionId": version["versionId"]})


def go_offline(page):
    page.context.set_offline(True)


def go_online(page):
    page.context.set_offline(False)


def status(page):
    return page.locator("#offline-status")


def says(page, words):
    expect(status(page)).to_contain_text(words)

"""An agent with a headset and no mouse: reads out what has its turn, presses keys, and counts both."""

from urllib.parse import parse_qsl, urlsplit

from tests.browser.walking_by_hand import MOST_STEPS
from tests.desk.clients import PASSWORD, client_of
from tests.firm_builders import make_firm, make_member
from triage.desk.call.speech import seconds_to_say
from triage.models.firm import Role

DESK = {"width": 1280, "height": 800}
MOST_KEYS = 120
CALLS = "/desk/call/"
STATE = "document.querySelector('[data-js-call-state]').dataset"


def sit_down(page, site, member=None):
    """An agent of an invented firm, or the member given, at the desk with this browser."""
    who = member or make_member(make_firm(), Role.AGENT)
    cookies = client_of(who).cookies.items()
    told = [{"name": name, "value": cookie.value, "url": f"{site}/desk/"} for name, cookie in cookies]
    page.context.add_cookies(told)
    return Agent(page, site, who)


class Agent:
    """`presses` and `seconds` are what the call took; `said` is everything that was read out."""

    def __init__(self, page, site, member=None):
        self.page, self.site, self.member = page, site, member
        self.presses, self.seconds, self.said = 0, 0, []

    def open(self, query="region=gb-eng"):
        self.page.set_viewport_size(DESK)
        self.page.goto(f"{self.site}{CALLS}?{query}")
        self.settle()
        self.page.reload()
        return self.settle()

    def settle(self):
        """As an agent does: wait until what stands there is what the page is going to show."""
        self.page.wait_for_function("() => document.getElementById('call-reference').textContent")
        self.page.wait_for_function("() => document.querySelector('[aria-busy=true]') === null")
        return self

    def sign_in(self):
        """At the door, as the member the agent is."""
        self.member.user.set_password(PASSWORD)
        self.member.user.save()
        self.page.fill("[name=account]", self.member.user.username)
        self.page.fill("[name=password]", PASSWORD)
        self.page.keyboard.press("Enter")

    @property
    def kind(self):
        return self.now("kind")

    def now(self, name):
        return self.page.evaluate(f"{STATE}.{name}")

    @property
    def trail(self):
        pairs = parse_qsl(self.now("query"), keep_blank_values=True)
        return {name: value for name, value in pairs if not name.startswith("call-") and name != "region"}

    @property
    def heading(self):
        return self.page.locator("#prompt p.count").inner_text().split("\n")[0]

    def press(self, key, moves=True):
        """One key; `moves` when the page must answer it with another."""
        self.settle()
        before = self.now("query")
        self.page.keyboard.press(key)
        self.presses += 1
        if moves:
            self.page.wait_for_function(f"was => {STATE}.query !== was", arg=before)

    def wait_for_answer(self, answer):
        self.page.wait_for_function(f"answer => {STATE}.query.includes(answer)", arg=answer)

    def type(self, text):
        """What the caller says, typed as it is said; every letter is a key."""
        self.press("/", moves=False)
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(text)
        self.presses += len(text)

    def found(self):
        """The lines found, as "question: answer"."""
        lines = self.page.locator("#suggestion-list button")
        return [f"{b.locator('span').inner_text()}: {b.locator('strong').inner_text()}" for b in lines.all()]

    def record(self, *wanted):
        """From the box to the list, one key for each line, and back to what to say."""
        self.press("Enter", moves=False)
        for words in wanted:
            at = next(at for at, line in enumerate(self.found()) if line.startswith(words))
            self.press(str(at + 1))
        self.press("Escape", moves=False)

    def say(self, text):
        self.said.append(text)
        self.seconds += seconds_to_say(text)

    def read_out(self):
        """Read every line whose turn it is; False where there was none."""
        turn = self.page.locator("#prompt li.current .spoken")
        if turn.count() == 0:
            return False
        self.say(turn.inner_text().strip("“”"))
        self.press("Space")
        return True

    def option_for(self, told):
        """The key of the answer that `told` (question to answer) holds, else of "can't tell"."""
        good = self.trail
        for link in self.page.locator("#prompt .options a[data-key]").all():
            pairs = dict(parse_qsl(urlsplit(link.get_attribute("href")).query))
            new = {n: v for n, v in pairs.items() if good.get(n) != v and n != "region" and not n.startswith("call-")}
            if new and all(told.get(name) == value for name, value in new.items()):
                return link.get_attribute("data-key")
        return "0"

    def go_on(self, told, board="1"):
        """Read and ask until the call is over or danger ends it and was read to the end."""
        for _ in range(MOST_KEYS):
            if self.page.locator("section.finished").count():
                return self
            if self.read_out():
                continue
            self.say(self.page.locator("#prompt-title").inner_text().removeprefix("Say:").strip(" “”"))
            self.press(board if self.kind == "caller" else self.option_for(told))
        raise AssertionError(f"the call is not over after {MOST_KEYS} keys")


def householder(page, site, told):
    """The heading and the lead a householder with the same oven comes to, answering only what is asked."""
    start = {name: told[name] for name in ("complaint", "heat-main") if name in told}
    query = "&".join(f"{name}={answer}" for name, answer in start.items())
    page.goto(f"{site}/check/?region=gb-eng&{query}")
    for _ in range(MOST_STEPS + 20):
        bars = page.locator("main .ask ul.bars a")
        if bars.count() == 0:
            break
        before = page.evaluate("location.href")
        here = dict(parse_qsl(urlsplit(before).query))
        links = [(link, dict(parse_qsl(urlsplit(link.get_attribute("href")).query))) for link in bars.all()]
        fitting = [link for link, to in links if all(told.get(n) == v for n, v in to.items() if n not in here)]
        (fitting[0] if fitting else bars.last).click()
        page.wait_for_function("was => location.href !== was", arg=before)
        page.wait_for_load_state("networkidle")
    return page.locator("h1").inner_text(), page.locator("main .words").inner_text()

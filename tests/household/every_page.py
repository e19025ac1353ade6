"""One address for every kind of page a householder can see."""

from tests.household.checks_done import address, answers_of, at

ELEMENT = answers_of("fan-element-open", "no-heat")
SEAL = answers_of("door-seal-worn", "door")
OPEN = {**SEAL, "cold": "yes", "supply-off": "yes"}
PAGES = {
    "start": "/?region=gb-eng",
    "danger": address("/danger/", complaint="no-heat"),
    "question": address(complaint="no-heat", danger="none"),
    "danger in place of a question": address(complaint="no-heat"),
    "make safe": address(complaint="smell", smell_type="plastic-or-fishy"),
    "gas": address(complaint="smell", smell_type="gas"),
    "advice": at("/check/", ELEMENT),
    "advice with a caution": at("/check/", answers_of("hinge-worn", "door", door_fit="snaps-or-drops")),
    "costs": at("/check/costs/", {**SEAL, "cost-use": "4", "cost-kwh": "27", "cost-litres": "70"}),
    "label": at("/check/costs/", {"danger": "none", "cost-litres": "73", "cost-cycle": "0,8x"}),
    "put right": at("/check/", {**SEAL, "did-hook-seal-back": "fixed"}),
    "task closed": at("/check/task/hook-seal-back/", SEAL),
    "task open": at("/check/task/hook-seal-back/", OPEN),
    "task not offered": address("/check/task/change-lamp/", complaint="no-heat"),
    "reading behind the danger signs": at("/reading/meter/", {}),
    "reading": at("/reading/meter/", {"danger": "none", "read-form": "1", "read-flashes": "35", "read-seconds": "0,5"}),
    "reading behind gates": at("/reading/gasket/", {"danger": "none"}),
    "reading shown": at("/reading/run-on/", {"danger": "none", "read-form": "1", "read-heard": "12"}),
    "meter task": at("/check/task/meter-test/", ELEMENT),
    "not this": address("/not-this/microwave/"),
    "gas smell": address("/not-this/gas-smell/"),
    "not electric": address(complaint="will-not-light", danger="none", oven_fuel="gas"),
    "broken address": "/check/?region=atlantis&complaint=no-heat&danger=none&lamp-state=blue",
}

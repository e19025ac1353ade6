"""Call rates are held against the order in which the trade meets the faults."""

import shutil

import pytest
import yaml

from tests.builders import ELECTRIC_OVEN, FAULTS, electric_oven, make_fault, make_pack
from triage.authoring.linting.finding import Gravity, PackSource
from triage.authoring.linting.trade_order import out_of_order
from triage.knowledge.problems import PackProblems

ORDER = """
provenance: From memory, for this test.
order:
  - [element-open]
  - [board-dead, thermostat-drifted, normal-preheat]
  - [programmer-not-set, lamp-failed, element-arcing]
"""


@pytest.fixture
def told(tmp_path):
    def what_is_found(order=ORDER, **faults):
        (tmp_path / "trade_order.yaml").write_text(order, "utf-8")
        pack = make_pack(faults=FAULTS | faults)
        return [(f.gravity, f.problem.where, f.problem.what) for f in out_of_order(pack, PackSource(tmp_path))]

    return what_is_found


def test_rates_in_the_trades_order_are_no_finding(told):
    assert told() == []


def test_a_rate_that_leaves_the_order_is_a_remark_with_both_rates(told):
    rare = make_fault("element-open", family="element", calls_per_1000=9.0)
    ((gravity, where, what),) = told(**{"element-open": rare})
    assert (gravity, where) == (Gravity.REMARK, "element-open")
    assert "9 times in 1000 and board-dead 30 times" in what


def test_a_fault_without_a_place_is_a_remark_but_not_none_of_these(told):
    ((gravity, where, what),) = told(**{"hinge-worn": make_fault("hinge-worn")})
    assert (gravity, where, what) == (Gravity.REMARK, "hinge-worn", "has no place in trade_order.yaml.")


def test_a_pack_may_state_no_order(tmp_path):
    assert out_of_order(make_pack(), PackSource(tmp_path)) == []


@pytest.mark.parametrize(
    ("order", "said"),
    [
        ("order: [[element-open]]", "`provenance` is missing. Give a text."),
        ("provenance: me\norder: element-open", "must be a list of lists of faults."),
        ("provenance: me\norder: [[element-open], [wheel]]", "has no 'wheel'."),
        ("provenance: me\norder: [[lamp-failed], [lamp-failed]]", "names 'lamp-failed' twice. Keep one of them."),
        ("provenance: me\norder: [[lamp-failed]]\nsource: x", "is not a field here."),
        ("[]", "does not hold named entries."),
        ("", "does not hold named entries."),
    ],
)
def test_an_order_that_cannot_be_read_is_refused_with_its_place(told, order, said):
    with pytest.raises(PackProblems) as refused:
        told(order)
    assert said in str(refused.value)
    assert "trade_order.yaml:" in str(refused.value)


def test_the_pack_people_use_keeps_to_the_order_and_names_every_fault():
    assert out_of_order(electric_oven(), PackSource(ELECTRIC_OVEN)) == []
    order = yaml.safe_load((ELECTRIC_OVEN / "trade_order.yaml").read_text("utf-8"))["order"]
    assert sorted(fault for group in order for fault in group) == sorted(
        set(electric_oven().faults) - {"other-not-listed"}
    )


def test_the_order_travels_with_a_copy_of_the_pack(tmp_path):
    copy = shutil.copytree(ELECTRIC_OVEN, tmp_path / "electric_oven")
    assert out_of_order(electric_oven(), PackSource(copy)) == []

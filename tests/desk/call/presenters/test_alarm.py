"""The band is there from the moment danger is recorded, with words and a number."""

from triage.desk.call.presenters.alarm import alarm_of


def test_no_danger_no_band(call):
    assert alarm_of(call("complaint=no-heat&danger=none")) is None


def test_danger_has_words_to_say_and_a_number_to_give(call):
    alarm = alarm_of(call("complaint=no-heat&danger=none&smoke-source=from-controls-or-vents"))
    assert alarm.stops
    assert (alarm.signal, alarm.instruction) == ("DANGER", "Get everyone out now.")
    assert alarm.numbers[0].number == "999"


def test_danger_without_a_number_of_its_own_gives_the_emergency_number(call):
    alarm = alarm_of(call("glass-state=glass-broken", region="us"))
    assert alarm.stops
    assert [number.number for number in alarm.numbers] == ["911"]


def test_a_caution_does_not_stop_the_call(call):
    alarm = alarm_of(call("complaint=trips&trip-device=rcd"))
    assert not alarm.stops
    assert alarm.heading == "It tripped: leave it off"

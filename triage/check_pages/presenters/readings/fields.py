"""The forms of readings: what each is called, how it is filled, and its fields with their labels.

This is the one place of these texts; the phone is sent the same tables. A field's name is that of the engine's table of
the reading. In a hint or label `%(volts)s` is the voltage of the place, `%(unit)s` its degrees and `%(tolerance)s` what
a cheap thermometer may be out by.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from django.utils.translation import gettext_lazy as _

from triage.check_pages.form_fields import InputField, Text

Tool = Literal["", "meter", "thermometer", "run-on", "preheat"]
"""What counts or keeps the time on the phone beside the form."""


@dataclass(frozen=True)
class FieldGroup:
    """Fields that belong together; one with a `summary` is folded until something stands in it. Of several
    `alternative` ones one is filled. With `columns` the fields come again and again, as rows under these names."""

    fields: tuple[InputField, ...]
    heading: Text = ""
    summary: Text = ""
    tool: Tool = ""
    columns: tuple[Text, ...] = ()
    alternative: bool = False


@dataclass(frozen=True)
class FormTexts:
    """What a kind of reading is called, as a heading and as a link, how its form is filled, and its fields."""

    name: Text
    intro: Text
    groups: tuple[FieldGroup, ...]

    def fields(self) -> Iterator[InputField]:
        """The fields that stand in the form once."""
        return (field for group in self.groups if not group.columns for field in group.fields)


SET = InputField("set", _("Heat that was set"), mode="numeric", conversion="temperature")
PLATE = FieldGroup(
    (
        InputField(
            "plate", _("Power of this setting"), _("From the manual or the plate, if it is given"), "W", "numeric"
        ),
        InputField("whole-plate", _("Power of the whole oven"), _("It stands on the rating plate"), "W", "numeric"),
        InputField(
            "rated-volts",
            _("Voltage on the plate"),
            _("It stands beside the watts, for example %(volts)s"),
            "V",
            "numeric",
        ),
        InputField(
            "supply-volts",
            _("Voltage of the supply"),
            _("Only if a display in your home shows it. Never measure it"),
            "V",
            "numeric",
        ),
    ),
    summary=_("What the rating plate says"),
)

METER = FormTexts(
    _("Power from the home’s meter"),
    _("Fill in one of the three ways. Everything else is optional and makes it surer."),
    (
        FieldGroup(
            (
                InputField(
                    "impulses",
                    _("Flashes for one kilowatt-hour"),
                    _("It stands on the meter, often 1000 imp/kWh"),
                    "imp/kWh",
                    "numeric",
                ),
                InputField(
                    "taps",
                    _("Moment of each flash"),
                    _("At least five, with a space between. The counter fills this in where it runs"),
                    "s",
                    "text",
                ),
                InputField(
                    "flashes",
                    _("Or: flashes counted"),
                    _("Start the clock at a flash and count that one as 1"),
                    mode="numeric",
                ),
                InputField("seconds", _("Time from the first to the last"), unit="s"),
            ),
            summary=_("By the flashes of the meter’s light"),
            tool="meter",
            alternative=True,
        ),
        FieldGroup(
            (
                InputField("before", _("First reading"), _("With all its decimals"), "kWh"),
                InputField("after", _("Second reading"), unit="kWh"),
                InputField("minutes", _("Time between the two"), unit="min"),
            ),
            summary=_("By two readings of the meter’s figures"),
            alternative=True,
        ),
        FieldGroup(
            (
                InputField("idle", _("With the oven off"), unit="W", mode="numeric"),
                InputField("drawing", _("With the oven heating"), unit="W", mode="numeric"),
            ),
            summary=_("By a display that shows watts"),
            alternative=True,
        ),
        FieldGroup(
            (
                InputField(
                    "background",
                    _("What the rest of the home draws"),
                    _("With the oven off, if you know it"),
                    "W",
                    "numeric",
                ),
            )
        ),
        PLATE,
    ),
)

THERMOMETER = FormTexts(
    _("Heat from an oven thermometer"),
    _("One reading is enough to begin with. Three or more tell far more."),
    (
        FieldGroup((SET,)),
        FieldGroup(
            (
                InputField("time", _("Minutes of reading"), limits="readings"),
                InputField("shown", _("Temperature of reading"), conversion="temperature", limits="temperature"),
            ),
            heading=_("Readings"),
            tool="thermometer",
            columns=(_("Minutes since it was switched on"), _("Temperature in %(unit)s")),
        ),
        FieldGroup(
            (
                InputField(
                    "tolerance",
                    _("How far off it may be"),
                    _("If it came with a note. Cheap ones: %(tolerance)s"),
                    conversion="difference",
                ),
                InputField(
                    "boiling",
                    _("What it showed in boiling water"),
                    _("If you tried that before"),
                    conversion="temperature",
                ),
            ),
            summary=_("About the thermometer"),
        ),
    ),
)

RUN_ON = FormTexts(
    _("How long the fan runs on"),
    _("Say when you last heard the fan and when you first found it still. Listen from a step away."),
    (
        FieldGroup(
            (
                InputField("heard", _("Last heard running"), _("Minutes after you switched the oven off"), "min"),
                InputField(
                    "stopped", _("First found still"), _("Leave empty while it runs. 0 if it never ran on"), "min"
                ),
                InputField("cold", _("The oven is stone cold and the fan still runs"), tick=True),
                InputField(
                    "much-heat",
                    _("It was after a very hot clean, or a long time on high or on the grill"),
                    tick=True,
                ),
            ),
            tool="run-on",
        ),
    ),
)

PREHEAT = FormTexts(
    _("How long the oven takes to get hot"),
    _("The more you can say about the oven, the surer the comparison."),
    (
        FieldGroup(
            (
                InputField(
                    "minutes",
                    _("Time it took"),
                    _("From cold until the light goes off, it beeps, or a thermometer shows it"),
                    "min",
                ),
                SET,
                InputField("waiting", _("It was not hot by then"), tick=True),
            ),
            tool="preheat",
        ),
        FieldGroup(
            (
                InputField("room", _("Heat of the kitchen"), mode="numeric", conversion="temperature"),
                InputField(
                    "litres", _("Size of the oven"), _("It stands on the label or in the manual"), "l", "numeric"
                ),
            ),
            summary=_("About the oven and the room"),
        ),
        PLATE,
    ),
)

GASKET = FormTexts(
    _("Where the door seal lets heat out"),
    _("Tick each place where the paper slips or the light shows. Leave the others."),
    (
        FieldGroup(
            (InputField("no-bottom", _("The door has no seal along the bottom"), _("Many have none there"), tick=True),)
        ),
    ),
)

FORMS: Mapping[str, FormTexts] = {
    "meter": METER,
    "thermometer": THERMOMETER,
    "run-on": RUN_ON,
    "preheat": PREHEAT,
    "gasket": GASKET,
}

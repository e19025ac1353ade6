"""The guide's units: each thing that has to run is started, after a restart of the host too, as the user without rights
and with the settings."""

import pytest

from tests.operations.server_guide import SETTINGS_FILE, manage_program, shell_commands, units, values

SHARED = "oven-.service.d/every.conf"


def enabled():
    (command,) = [command for command in shell_commands() if command.startswith("systemctl enable --now ")]
    return command.split()[3:]


def test_what_is_enabled_is_what_can_be_enabled():
    can = {name.removesuffix(".service") for name, text in units().items() if "[Install]" in text}
    assert {name.partition("@")[0] + "@" * ("@" in name) for name in enabled()} == can
    assert len([name for name in enabled() if name.startswith("oven-web@")]) == 2


@pytest.mark.parametrize("name", [name for name in units() if name.endswith(".service")])
def test_the_shared_lines_are_in_force_for_every_service(name):
    """systemd.unit(5): `foo-.service.d/` holds for every service whose name begins with `foo-`."""
    assert name.startswith("oven-")
    assert values(name, "User") == []
    assert values(SHARED, "User") == ["oven"]
    assert "runuser -u oven --" in manage_program()
    assert values(SHARED, "EnvironmentFile") == [SETTINGS_FILE]
    assert f". {SETTINGS_FILE};" in manage_program()
    assert values(SHARED, "ProtectSystem") == ["strict"]


def test_what_is_due_every_day_is_started_every_day():
    deeds = [line.rpartition("manage.py ")[2] for line in values("oven-daily.service", "ExecStart")]
    assert deeds == ["erase_expired", "clearsessions", "compute_reports"]
    assert values("oven-daily.service", "Type") == ["oneshot"]
    assert values("oven-daily.timer", "OnCalendar") == ["daily"]
    assert values("oven-daily.timer", "Persistent") == ["true"]


@pytest.mark.parametrize("name", ["oven-web@.service", "oven-deliver.service"])
def test_what_ends_is_started_again_and_never_given_up(name):
    """systemd.unit(5) gives up after 5 starts in 10 seconds, unless they are further apart."""
    assert values(name, "Restart") == ["always"]
    assert int(values(name, "RestartSec")[0]) > 10 / 5 - 1

"""A fresh machine gets what it needs or is told what to do; nothing half-made stays behind."""

import os
import signal
import sys
from pathlib import Path

import pytest

from site_config import first_run


@pytest.fixture
def elsewhere(monkeypatch, tmp_path):
    """The first run of a copy whose `.venv` does not exist yet."""
    monkeypatch.setattr(first_run, "VENV", tmp_path / ".venv")
    return tmp_path / ".venv"


@pytest.fixture
def lock(monkeypatch, tmp_path):
    path = tmp_path / "runtime.txt"
    monkeypatch.setattr(first_run, "LOCK", path)
    return path


def test_these_tests_run_with_the_locked_packages():
    assert first_run.missing_packages() == []
    first_run.require_packages()


def test_a_missing_or_different_package_is_found_and_a_marked_one_left_to_pip(lock):
    lock.write_text(
        "django==1.0 \\\n    --hash=sha256:0\n"
        "no-such-thing==2.0 \\\n    --hash=sha256:0\n"
        "tzdata==3.0 ; sys_platform == 'win32' \\\n    --hash=sha256:0\n",
        "utf-8",
    )
    assert first_run.missing_packages() == ["django==1.0", "no-such-thing==2.0"]


def test_another_command_on_a_fresh_machine_is_told_what_to_run(lock, capsys):
    lock.write_text("no-such-thing==2.0 \\\n", "utf-8")
    with pytest.raises(first_run.CannotStart) as caught:
        first_run.require_packages()
    assert first_run.report(caught.value) == 2
    assert capsys.readouterr().err == (
        "This Python has not got no-such-thing==2.0. Run `python3 manage.py demo` once, which makes `.venv`,"
        " and then use `.venv/bin/python manage.py`.\n"
    )


def test_a_python_without_the_venv_package_says_which_to_install(elsewhere, monkeypatch):
    monkeypatch.setitem(sys.modules, "ensurepip", None)
    with pytest.raises(first_run.CannotStart) as caught:
        first_run.make_venv()
    assert str(caught.value) == (
        "This Python cannot make a virtual environment. On Debian or Ubuntu run"
        " `apt-get install python3-venv` as root, then run this again."
    )
    assert not elsewhere.exists()


def test_an_interrupted_attempt_leaves_no_half_a_folder(elsewhere, monkeypatch):
    def stop_in_the_middle(folder, with_pip):
        (folder / "bin").mkdir(parents=True)
        raise KeyboardInterrupt

    monkeypatch.setattr(first_run.venv, "create", stop_in_the_middle)
    with pytest.raises(KeyboardInterrupt):
        first_run.make_venv()
    assert not elsewhere.exists()


def test_a_failed_installation_says_what_to_do(lock, capfd):
    lock.write_text("django==5.2.19 --hash=nonsense\n", "utf-8")
    with pytest.raises(first_run.CannotStart, match="could not be installed: pip says why above"):
        first_run.install_packages()
    assert capfd.readouterr().err


@pytest.fixture
def signals_as_before():
    before = {number: signal.getsignal(number) for number in (signal.SIGTERM, signal.SIGHUP)}
    yield
    for number, handler in before.items():
        signal.signal(number, handler)


def test_a_polite_kill_removes_the_demo_folder_even_before_the_server_runs(signals_as_before):
    with pytest.raises(SystemExit) as caught, first_run.demo_surroundings():
        os.kill(os.getpid(), signal.SIGTERM)
    assert caught.value.code == 128 + signal.SIGTERM


def test_the_demo_keeps_what_the_environment_says_and_removes_its_folder(monkeypatch, signals_as_before):
    before = dict(os.environ)
    monkeypatch.setattr(os, "environ", {**before, "ALLOWED_HOSTS": "oven.example.org"})
    for name in ("DATABASE_URL", "SECRET_KEY"):
        os.environ.pop(name, None)
    with first_run.demo_surroundings():
        folder = Path(os.environ["DATABASE_URL"].removeprefix("sqlite:///")).parent
        assert folder.is_dir()
        assert os.environ["ALLOWED_HOSTS"] == "oven.example.org"
        assert len(os.environ["SECRET_KEY"]) > 50
    assert not folder.exists()

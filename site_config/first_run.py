"""What happens before Django can be imported: the first run on a fresh machine.

Standard library only. `demo` gets a `.venv` with exactly the locked packages and starts again inside it; any
other command is told what is missing. Whatever this module makes and cannot finish, it removes.
"""

import importlib.metadata
import os
import re
import secrets
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import venv
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NoReturn

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
LOCK = ROOT / ".locks" / "runtime.txt"

# A requirement for every platform; lines with a marker after the version are left to pip.
PINNED = re.compile(r"^(?P<name>[A-Za-z0-9._-]+)==(?P<version>\S+) \\$", re.MULTILINE)


class CannotStart(Exception):
    """The program cannot start; the message is a full sentence with the remedy."""


def report(reason: CannotStart) -> int:
    """Say why on standard error; the exit status comes back."""
    print(reason, file=sys.stderr)
    return 2


def ensure_packages(arguments: list[str]) -> None:
    """Return when the locked packages are there; otherwise install them in `.venv` and start again in it."""
    if not missing_packages():
        return
    if not running_in_own_venv():
        make_venv()
        start_again(arguments)
    install_packages()
    if missing_packages():
        raise CannotStart("The packages were installed but do not match the lock. Remove `.venv` and run this again.")
    start_again(arguments)


def require_packages() -> None:
    """Raise CannotStart when this Python lacks a locked package."""
    missing = missing_packages()
    if missing:
        raise CannotStart(
            f"This Python has not got {missing[0]}. Run `python3 manage.py demo` once, which makes `.venv`,"
            f" and then use `{venv_python().relative_to(ROOT)} manage.py`."
        )


def missing_packages() -> list[str]:
    """Locked packages that this Python lacks or has in another version, as `name==version`."""
    return [
        f"{pin['name']}=={pin['version']}"
        for pin in PINNED.finditer(LOCK.read_text("utf-8"))
        if installed_version(pin["name"]) != pin["version"]
    ]


def installed_version(name: str) -> str | None:
    try:
        return importlib.metadata.version(name)
    except importlib.metadata.PackageNotFoundError:
        return None


def running_in_own_venv() -> bool:
    return Path(sys.prefix).resolve() == VENV.resolve()


def venv_python() -> Path:
    return VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def make_venv() -> None:
    if venv_python().exists():
        return
    try:
        import ensurepip  # noqa: F401  (Debian ships Python without it, and the venv module then leaves half a folder)
    except ImportError:
        raise CannotStart(
            "This Python cannot make a virtual environment. On Debian or Ubuntu run"
            " `apt-get install python3-venv` as root, then run this again."
        ) from None
    print("First run: making .venv.", flush=True)
    try:
        venv.create(VENV, with_pip=True)
    except BaseException:
        shutil.rmtree(VENV, ignore_errors=True)
        raise


def install_packages() -> None:
    print("First run: installing the locked packages; this takes about half a minute.", flush=True)
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check", "--quiet"]
    if subprocess.call([*pip, "install", "--require-hashes", "-r", str(LOCK)]) != 0:
        raise CannotStart(
            "The packages could not be installed: pip says why above. Check the network and run this again;"
            " if pip itself is missing, remove `.venv` first."
        )
    importlib.invalidate_caches()


def start_again(arguments: list[str]) -> NoReturn:
    """Run the same command in `.venv`; never returns."""
    command = [str(venv_python()), str(ROOT / "manage.py"), *arguments[1:]]
    if os.name == "nt":  # exec there would give the prompt back while the program still runs
        sys.exit(subprocess.call(command))
    os.execv(command[0], command)


@contextmanager
def demo_surroundings() -> Iterator[None]:
    """Settings for a demo without set-up that leaves nothing behind; what the environment says stays."""
    leave_cleanly_on_signals()
    with tempfile.TemporaryDirectory(prefix="oven-fault-check-") as folder:
        chosen = {
            "SECRET_KEY": secrets.token_urlsafe(50),
            "ALLOWED_HOSTS": ",".join(["localhost", "127.0.0.1", "[::1]", *own_addresses()]),
            "DATABASE_URL": f"sqlite:///{folder}/demo.sqlite3",
            "HTTPS_ONLY": "0",
            "STATIC_FROM_SOURCE": "1",
            "DEMO": "1",
        }
        for name, value in chosen.items():
            os.environ.setdefault(name, value)
        yield


def leave_cleanly_on_signals() -> None:
    """Until the server watches for signals itself, a polite kill must still remove the demo's folder."""
    for name in ("SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), lambda number, _frame: sys.exit(128 + number))


def own_addresses() -> list[str]:
    """This machine's address on its network, or nothing when it is on none. No packet is sent."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))
        except OSError:
            return []
        return [probe.getsockname()[0]]

#!/usr/bin/env python3
"""The site's command line. `python3 manage.py demo` works on a machine that has nothing but Python 3.11."""

import os
import sys

if sys.version_info < (3, 11):  # noqa: UP036  (an older Python cannot even read the next import)
    sys.exit(f"This program needs Python 3.11 or newer; this is Python {sys.version.split()[0]}.")

from site_config import first_run


def main():
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "site_config.settings")
    if sys.argv[1:2] == ["demo"]:
        first_run.ensure_packages(sys.argv)
        with first_run.demo_surroundings():
            run_command()
    else:
        first_run.require_packages()
        run_command()


def run_command():
    # Only here, because before the first run there is no Django.
    from django.core.exceptions import ImproperlyConfigured
    from django.core.management import execute_from_command_line

    try:
        execute_from_command_line(sys.argv)
    except ImproperlyConfigured as problem:
        raise first_run.CannotStart(problem) from problem


if __name__ == "__main__":
    try:
        main()
    except first_run.CannotStart as reason:
        sys.exit(first_run.report(reason))
    except KeyboardInterrupt:
        sys.exit(130)

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
        if sys.argv[1:2] == ["pack"]:
            run_pack_command()
        else:
            run_command()


def run_command():
    # Only here, because before the first run there is no Django.
    from django.core.exceptions import ImproperlyConfigured
    from django.core.management import execute_from_command_line

    try:
        execute_from_command_line(sys.argv)
    except ImproperlyConfigured as problem:
        raise first_run.CannotStart(problem) from problem


def run_pack_command():
    """The author's tools work on files alone: without a site, its settings, a secret key or a database."""
    from django.conf import settings

    from site_config import env
    from triage.conf import DEFAULT_REGION
    from triage.management.commands.pack import Command

    region = env.text(DEFAULT_REGION.name, default=DEFAULT_REGION.default)
    settings.configure(USE_I18N=False, TIME_ZONE="UTC", **{DEFAULT_REGION.name: region})
    Command().run_from_argv(sys.argv)


if __name__ == "__main__":
    try:
        main()
    except first_run.CannotStart as reason:
        sys.exit(first_run.report(reason))
    except KeyboardInterrupt:
        sys.exit(130)

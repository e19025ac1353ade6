"""A delivery worker whose clock is wrong: `python -m tests.bench.clock_skew SECONDS`; negative is behind."""

import sys
from datetime import timedelta

import django
from django.core.management import call_command
from django.utils import timezone


def main():
    django.setup()
    right, skew = timezone.now, timedelta(seconds=float(sys.argv[1]))
    timezone.now = lambda: right() + skew
    call_command("send_deliveries")


if __name__ == "__main__":
    main()

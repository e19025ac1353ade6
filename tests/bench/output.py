"""What a bench says, line by line, as soon as it knows."""

import sys


def say(line):
    sys.stdout.write(line + "\n")
    sys.stdout.flush()

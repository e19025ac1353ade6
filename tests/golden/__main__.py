"""Writes the golden file. Read the difference it makes before keeping it.

python -m tests.golden          the same trails, with the steps of today
python -m tests.golden afresh   new trails
"""

import sys

from tests.golden.kept_steps import choose, kept, write


def main(arguments):
    if arguments not in ([], ["afresh"]):
        sys.exit(__doc__)
    trails = choose() if arguments else kept()
    write(trails)
    sys.stdout.write(f"{len(trails)} trails written.\n")


if __name__ == "__main__":
    main(sys.argv[1:])

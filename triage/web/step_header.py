"""Which kind of page an answer holds, in a header of its own: so steps are counted without looking into pages.

A cache in front of the site counts by it too; its answers never come as far as here.
"""

STEP = "X-Check-Step"

"""The forms of readings and what comes of them: one module a kind, and what all of them share.

What is typed stands in the address under names that begin with `read-`, is refused by a sentence beside its field, and
always comes back as it was typed. The written reading of `triage.engine.readings` is made here and worked out there.
"""

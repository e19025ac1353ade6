"""Outcomes to proposed numbers, and how good the chances are: what repairers found, held against what was stated.

    outcome, outcome_file   one visit; many from a YAML file
    counting                what one outcome says about each number (one EM step)
    shrinking, call_rates   how far outcomes may move the pack's numbers; dangers are never lowered
    lesson                  all firms together, or one firm shrunk to the others
    scores, held_out        before and after, on outcomes that were not learnt from
    proposal, reliability_plot   what a person reads before deciding
    acceptance              the overlay file, written when a person accepts

Nothing here changes a pack. Red flags, bands, gates and tasks are never learnt.
"""

"""What leaves the house: a check written down as a job sheet, its forms, its delivery and its end.

`actions` is the only writer. A job sheet is recomputed here from its trail; no caller's conclusion is ever stored.
"""

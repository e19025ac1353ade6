"""The emergency number of every region and where it was seen, kept apart from the regions on purpose.

"seen": an excerpt of an official page was read (kind of page behind it). "memory": from general knowledge only; to be
confirmed on an official page.
"""

EMERGENCY = {
    "gb-eng": ("999", "seen"),   # a fire service
    "gb-wls": ("999", "seen"),
    "gb-sct": ("999", "seen"),
    "gb-nir": ("999", "seen"),
    "ie": ("112", "seen"),       # national emergency call page; 999 reaches the same
    "de": ("112", "seen"),       # page of the European Union on 112, for every member state
    "fr": ("112", "seen"),
    "es": ("112", "seen"),
    "it": ("112", "seen"),
    "nl": ("112", "seen"),
    "pl": ("112", "seen"),
    "se": ("112", "seen"),
    "us": ("911", "memory"),
    "ca": ("911", "memory"),
    "au": ("000", "seen"),       # national triple-zero page; 112 from mobiles
    "nz": ("111", "memory"),
    "za": ("112", "seen"),       # from mobiles; fire numbers are local
    "in": ("112", "seen"),
    "iec": ("112", "memory"),    # works on most mobile networks; the page says that it may differ
}  # fmt: skip

# Other numbers a page may show: each was seen on an official page.
SHOWN_BESIDES = {
    ("gb-eng", "gas"): "0800 111 999",    # a council's page on gas leaks
    ("gb-wls", "gas"): "0800 111 999",
    ("gb-sct", "gas"): "0800 111 999",
    ("nl", "gas"): "0800-9009",           # the network operators' association
    ("nl", "network"): "0800-9009",
}  # fmt: skip

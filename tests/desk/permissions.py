"""Who may open what: a row for every address of the site, and what each of the cast gets there.

The cast, in the order they knock: nobody; the householder with the link to the job sheet; another firm's owner; the
firm's agent, its repairer, its owner. Each gets one of

    in      the page, or what was asked for is done
    door    the way to the sign-in
    role    a refusal, because it is not for this role
    gone    nothing is there, in the same words as for what nobody has
"""

from triage.jobsheet.sender_token import rebuild_token

ACTORS = ("nobody", "householder", "stranger", "agent", "repairer", "owner")

ANYBODY = ("in",) * 6
PASSWORD_ONLY = ("door", "door", "in", "in", "in", "in")
OWN_PAGES = FIRM_OF_ALL = PASSWORD_ONLY
SHEET_OF_ALL = ("door", "door", "gone", "in", "in", "in")
SHEET_OF_REPAIRER = ("door", "door", "gone", "role", "in", "in")
SHEET_OF_OWNER = ("door", "door", "gone", "role", "role", "in")
FIRM_OF_OWNER = ("door", "door", "in", "role", "role", "in")  # another firm's owner sees that firm's
FIRM_OF_REPAIRER = ("door", "door", "in", "role", "in", "in")
THING_OF_OWNER = SHEET_OF_OWNER
SITE_STAFF = ("door", "door", "role", "role", "role", "role")
WITH_TOKEN = ("gone", "in", "gone", "gone", "gone", "gone")

# Not the desk's: being signed in there changes nothing, and being somebody changes nothing.
ALIKE_FOR_ALL = {
    *("household-start", "household-danger", "household-step", "household-task", "household-reading"),
    *("household-summary", "household-costs", "household-exit"),
    *("household-hand-over", "household-hand-over-kept", "household-hand-over-blank"),
    *("offline-worker", "offline-manifest", "offline-pack", "offline-page-bundle"),
    *("operations-health", "operations-ready", "operations-metrics"),
    *("api-description", "api-job-sheet-schema", "api-pack", "api-step", "api-job-sheets", "api-job-sheet"),
    *("api-nowhere", "call", "embed-frame", "embed-loader", "embed-accent"),
}

GET_ACCESS = {
    "household-sheet": WITH_TOKEN,
    "household-sheet-erase": WITH_TOKEN,
    "desk-inbox": OWN_PAGES,
    "desk-sign-in": ANYBODY,
    "desk-verify": PASSWORD_ONLY,
    "desk-firms": PASSWORD_ONLY,
    "desk-invitation": ANYBODY,
    "desk-account": OWN_PAGES,
    "desk-second-factor": OWN_PAGES,
    "desk-sheet": SHEET_OF_ALL,
    "desk-outcome": SHEET_OF_REPAIRER,
    "desk-erase": SHEET_OF_OWNER,
    "desk-text": SHEET_OF_REPAIRER,
    "desk-json": SHEET_OF_REPAIRER,
    "desk-calendar": SHEET_OF_REPAIRER,
    "desk-code": SHEET_OF_ALL,
    "desk-photo": SHEET_OF_ALL,
    "desk-repair-form": SHEET_OF_REPAIRER,
    "desk-call": FIRM_OF_ALL,
    "desk-call-previous-sheet": FIRM_OF_ALL,
    "desk-call-booking": FIRM_OF_ALL,
    "desk-call-confirmation": SHEET_OF_ALL,
    "desk-call-phrases": FIRM_OF_ALL,
    "desk-call-phone-code": FIRM_OF_ALL,
    "desk-calibration": FIRM_OF_REPAIRER,
    "desk-exports": FIRM_OF_OWNER,
    "desk-sheets-csv": FIRM_OF_OWNER,
    "desk-open-repair": FIRM_OF_OWNER,
    "desk-outcomes-yaml": FIRM_OF_OWNER,
    "desk-deliveries": FIRM_OF_OWNER,
    "desk-settings": FIRM_OF_OWNER,
    "desk-keys": FIRM_OF_OWNER,
    "desk-staff": FIRM_OF_OWNER,
    "desk-knowledge": SITE_STAFF,
    "desk-knowledge-tree": SITE_STAFF,
}

# What each form sends, and who may send it. What is not here answers GET alone.
POST_ACCESS = {
    "desk-sign-in": ({"account": "x", "password": "x"}, ANYBODY),
    "desk-sign-out": ({}, ANYBODY),
    "desk-verify": ({"code": "123456"}, PASSWORD_ONLY),
    "desk-firms": ({"member": "0"}, ("door", "door", "gone", "gone", "gone", "gone")),
    # Whoever holds the link may use it, once: the third to knock is signed in, joins, and uses it up.
    "desk-invitation": ({"account": "", "password": ""}, ("in", "in", "in", "gone", "gone", "gone")),
    "desk-account": ({"old": "x", "new": "x"}, OWN_PAGES),
    "desk-second-factor": ({"code": "1"}, OWN_PAGES),
    "desk-call-booking": ({}, FIRM_OF_ALL),
    "desk-status": ({"status": "booked"}, SHEET_OF_ALL),
    "desk-note": ({"text": "Called."}, SHEET_OF_ALL),
    "desk-outcome": ({"found": "fan-element-open", "result": "first-visit", "minutes": "30"}, SHEET_OF_REPAIRER),
    "desk-erase": ({"sure": "yes"}, SHEET_OF_OWNER),
    "desk-delivery-test": ({}, FIRM_OF_OWNER),
    "desk-delivery-retry": ({}, THING_OF_OWNER),
    "desk-settings": ({}, FIRM_OF_OWNER),
    "desk-webhook-secret": ({}, FIRM_OF_OWNER),
    "desk-keys": ({"name": "Telephone menu"}, FIRM_OF_OWNER),
    "desk-key-revoke": ({}, THING_OF_OWNER),
    "desk-staff": ({"name": "Kim", "role": "agent"}, FIRM_OF_OWNER),
    "desk-staff-action": ({"role": "agent"}, THING_OF_OWNER),
    "desk-withdraw": ({}, THING_OF_OWNER),
}


def token_of(sheet):
    return rebuild_token(sheet.reference, sheet.token_hash)

"""The proofs: long searches whose result depends on nothing but files, so that they need running only when one changed.

Python files are followed through their imports from the tests and from `modules`, which names what Django loads by a
string; `data` names everything that is not Python. Whatever is in doubt stands in a list: a proof that runs once too
often costs minutes, one that does not run proves nothing.
"""

from dataclasses import dataclass

ENGINE_DATA = ("triage/knowledge/**", "!triage/knowledge/packs/*/text/**")
ENGINE_SCRIPTS = ("triage/static/triage/offline/**", "tests/golden/phone/**")
# All that a page of a check may use: everything but other audiences and the author's commands.
PAGES = (
    "site_config/**",
    "triage/**",
    "!triage/api/**",
    "!triage/authoring/**",
    "!triage/desk/**",
    "!triage/embed/**",
    "!triage/learning/**",
    "!triage/management/**",
)
PAGE_DATA = (
    "triage/knowledge/**",
    "triage/templates/**",
    "!triage/templates/triage/desk/**",
    "!triage/templates/triage/call/**",
    "triage/static/**",
    "!triage/static/triage/desk/**",
    "!triage/static/triage/call/**",
)


@dataclass(frozen=True)
class Proof:
    """`tests` are the files pytest runs; a pattern that begins with `!` takes files out again."""

    name: str
    says: str
    tests: tuple[str, ...]
    data: tuple[str, ...]
    modules: tuple[str, ...] = ()


PROOFS = (
    Proof(
        "walks",
        "every state near the start and whole checks keep every rule",
        ("tests/safety/test_walk.py",),
        ENGINE_DATA,
    ),
    Proof("forged", "no forged trail breaks a rule", ("tests/safety/test_forged.py",), ENGINE_DATA),
    Proof("mutations", "an engine that breaks a rule is caught", ("tests/safety/test_mutations.py",), ENGINE_DATA),
    Proof(
        "pages",
        "thousands of pages keep every rule",
        ("tests/safety/test_pages.py",),
        PAGE_DATA,
        PAGES,
    ),
    Proof(
        "page-mutations",
        "a page that breaks a rule is caught",
        ("tests/safety/test_page_mutations.py",),
        PAGE_DATA,
        PAGES,
    ),
    Proof(
        "triage-rates",
        "how often danger is missed and harmless trouble is called dangerous",
        ("tests/safety/test_triage_rates.py",),
        (*ENGINE_DATA, "tests/published/*.yaml"),
    ),
    Proof(
        "engine-properties",
        "what holds of every set of answers, tried by property-based tests on the small pack and on people's own",
        (
            "tests/engine/test_advice.py",
            "tests/engine/test_belief.py",
            "tests/engine/test_check.py",
            "tests/engine/test_expected_information.py",
            "tests/engine/test_next_question.py",
        ),
        ENGINE_DATA,
    ),
    Proof(
        "simulated-checks",
        "made-up people have short checks and get the right repairer with the right parts",
        ("tests/engine/test_simulated_checks.py", "tests/engine/test_kit.py"),
        ENGINE_DATA,
    ),
    Proof(
        "engine-parity",
        "the phone's engine says what Python's says",
        ("tests/golden/test_parity.py",),
        (*ENGINE_DATA, *ENGINE_SCRIPTS),
    ),
    Proof(
        "page-parity",
        "a page made on the phone has the bytes of the site's",
        ("tests/offline/test_page_parity.py", "tests/offline/test_reading_parity.py"),
        PAGE_DATA,
        PAGES,
    ),
    Proof(
        "step-view",
        "no address breaks a page of a check",
        ("tests/attack/test_step_view.py",),
        PAGE_DATA,
        PAGES,
    ),
    Proof(
        "fuzzing",
        "no parser is broken by an input nobody meant",
        ("tests/attack/test_fuzzing.py",),
        PAGE_DATA,
        ("site_config/**", "triage/**"),
    ),
)
BY_NAME = {proof.name: proof for proof in PROOFS}

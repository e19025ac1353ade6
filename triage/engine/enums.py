"""The closed sets a pack is written in. Each member is the very text that stands in YAML and in JSON."""

from enum import StrEnum


class FaultKind(StrEnum):
    """`USER` is a cause on the user's side, `OTHER` none of the faults the pack knows."""

    FAULT = "fault"
    NORMAL = "normal"
    USER = "user"
    OTHER = "other"


class PerformedBy(StrEnum):
    """Who may put a fault right."""

    HOUSEHOLDER = "householder"
    TECHNICIAN = "technician"
    ELECTRICIAN = "electrician"
    NETWORK_OPERATOR = "network-operator"


class InterimUse(StrEnum):
    """How the oven may be used until a fault is put right."""

    LEAVE_OFF = "leave-off"
    OTHER_FUNCTIONS = "other-functions"
    LIMITED = "limited"
    USE_WITH_CARE = "use-with-care"
    USE_FREELY = "use-freely"
    AFTER_CLEANING = "after-cleaning"
    ASK = "ask"


class Method(StrEnum):
    """How an observation is made: from memory only; by looking or listening, nothing switched; by running the oven."""

    MEMORY = "memory"
    LOOK = "look"
    TRIAL = "trial"


class Competence(StrEnum):
    """Who may do a task (IEC 60050-195-04-01 to -03)."""

    ORDINARY = "ordinary"
    INSTRUCTED = "instructed"
    SKILLED = "skilled"


class SwitchUse(StrEnum):
    """Which switches may be touched under a red flag: none; only one away from the trouble; any."""

    NEVER = "never"
    AWAY = "away"
    ANY = "any"


class PhoneService(StrEnum):
    """Whose number a red flag's page shows."""

    EMERGENCY = "emergency"
    GAS = "gas"
    NETWORK = "network"


class Contact(StrEnum):
    """Who must come or be asked after a red flag."""

    EMERGENCY = "emergency"
    GAS = "gas"
    NETWORK = "network"
    ELECTRICIAN = "electrician"
    TECHNICIAN = "technician"
    DOCTOR = "doctor"
    ASBESTOS = "asbestos"
    RECALL = "recall"


class SignalWord(StrEnum):
    """Signal words of ISO 3864-2 and ANSI Z535, gravest first."""

    DANGER = "DANGER"
    WARNING = "WARNING"
    CAUTION = "CAUTION"
    NOTICE = "NOTICE"


class SafetyGate(StrEnum):
    """What is asked, never assumed, before the steps of a task show."""

    COLD = "cold"
    SUPPLY_OFF = "supply-off"
    PLUG_OR_BREAKER_OFF = "plug-or-breaker-off"
    OVEN_APART = "oven-apart"


class PriceClass(StrEnum):
    """What a whole repair costs, roughly: P0 takes no part, P1 to P4 are the appliance's, E1 and E2 the wiring's."""

    P0 = "p0"
    P1 = "p1"
    P2 = "p2"
    P3 = "p3"
    P4 = "p4"
    E1 = "e1"
    E2 = "e2"

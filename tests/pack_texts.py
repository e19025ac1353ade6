"""What the pack people use says, looked up and not written down again: an author who changes a name breaks no test."""

from triage.knowledge.library import library


def fault_name(fault, region="gb-eng"):
    return library().texts_for(region).faults[fault].name


def fault_trade_name(fault, region="gb-eng"):
    return library().texts_for(region).faults[fault].trade

"""The decision engine: weighted evidence about faults, the next question, and the safety rules above both.

Pure Python: no Django, files, clock, dice or logs. Only the names below are used from outside.
"""

from triage.engine.advice import Cause, Verdict
from triage.engine.belief import Belief, believe
from triage.engine.check import Advice, Ask, MakeSafe, NotThis, Step, advise
from triage.engine.errors import PackError
from triage.engine.explanation import Weight
from triage.engine.model import Model, compile_model
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, OPENING, SCREEN, Band, Level, Pack, RedFlag, Region, Task
from triage.engine.safety import gate_answers, is_open
from triage.engine.trail import Problem, Reading, read_trail

__all__ = [
    "CANT_TELL",
    "NONE_OF_THESE",
    "OPENING",
    "SCREEN",
    "Advice",
    "Ask",
    "Band",
    "Belief",
    "Cause",
    "Level",
    "MakeSafe",
    "Model",
    "NotThis",
    "Pack",
    "PackError",
    "Problem",
    "Reading",
    "RedFlag",
    "Region",
    "Step",
    "Task",
    "Verdict",
    "Weight",
    "advise",
    "believe",
    "compile_model",
    "gate_answers",
    "is_open",
    "read_trail",
]

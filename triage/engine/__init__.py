"""The decision engine: weighted evidence about faults, the next question, and the safety rules above both.

Pure Python: no Django, files, clock, dice or logs. `run_check` is the way in; the names below are those most callers
need. Every module may be imported; names that begin with an underscore are its own.
"""

from triage.engine.advice import Cause, Verdict
from triage.engine.answers import AnswerProblem, ParsedAnswers, parse_answers
from triage.engine.belief import Belief, infer_belief
from triage.engine.check import Check, Emergency, OutOfScope, Question, Result, Step, run_check
from triage.engine.errors import PackError
from triage.engine.explanation import WeightOfEvidence
from triage.engine.model import Model, compile_model
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, OPENING, SCREEN, Band, Level, Pack, RedFlag, Region, Task
from triage.engine.safety import gate_answers, is_open

__all__ = [
    "CANT_TELL",
    "NONE_OF_THESE",
    "OPENING",
    "SCREEN",
    "AnswerProblem",
    "Band",
    "Belief",
    "Cause",
    "Check",
    "Emergency",
    "Level",
    "Model",
    "OutOfScope",
    "Pack",
    "PackError",
    "ParsedAnswers",
    "Question",
    "RedFlag",
    "Region",
    "Result",
    "Step",
    "Task",
    "Verdict",
    "WeightOfEvidence",
    "compile_model",
    "gate_answers",
    "infer_belief",
    "is_open",
    "parse_answers",
    "run_check",
]

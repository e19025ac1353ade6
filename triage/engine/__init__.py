"""The decision engine: weighted evidence about faults, the next question, and the safety rules above both.

Pure Python: no Django, files, clock, dice or logs. Only the names below are used from outside.
"""

from triage.engine.advice import Cause, Verdict
from triage.engine.answers import AnswerProblem, ParsedAnswers, parse_answers
from triage.engine.belief import Belief, believe
from triage.engine.check import Emergency, OutOfScope, Question, Result, Step, advise
from triage.engine.errors import PackError
from triage.engine.explanation import Weight
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
    "Weight",
    "advise",
    "believe",
    "compile_model",
    "gate_answers",
    "is_open",
    "parse_answers",
]

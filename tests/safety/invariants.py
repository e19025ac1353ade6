"""What must hold of every step of every check, one function per rule, each giving its violations as sentences.

Every function takes the pack, the region, the trail as it was sent and the check that came of it. What a rule needs
is worked out here from the pack's own lists and from the raw trail, never with the engine's safety rules, so that a
mistake there cannot hide itself. Only beliefs are the engine's own: other tests prove them against other programs.
"""

from triage.engine import CANT_TELL, Band, Emergency, OutOfScope, Question, Region, Result, compile_model, infer_belief
from triage.engine import answers as engine_answers
from triage.engine import check as engine_check

ONE_IN = 6


def flags_answered(pack, pairs):
    """The gravest red flag each question was answered with; a second answer to a question takes none away."""
    gravest = {}
    for name, answer in pairs:
        observation = pack.observations.get(name)
        flag = pack.red_flags[observation.flags[answer]] if observation and answer in observation.flags else None
        if flag and (name not in gravest or flag.rank < gravest[name].rank):
            gravest[name] = flag
    return sorted(dict.fromkeys(gravest.values()), key=lambda flag: flag.rank)


def ends(flag):
    return flag.level.value in ("emergency", "stop")


def danger_ends_the_check(pack, region, pairs, check):
    """1: an ending red flag gives make-safe at once, that flag with it, the gravest first, and nothing to try."""
    step = check.step
    flags = flags_answered(pack, pairs)
    if not any(ends(flag) for flag in flags):
        return ["It is make-safe although no red flag was answered."] if isinstance(step, Emergency) else []
    if not isinstance(step, Emergency):
        names = ", ".join(flag.id for flag in flags)
        return [f"{names} was answered, and the step is {type(step).__name__}."]
    wrong = []
    if list(step.flags) != flags:
        wrong.append(f"Answered: {[f.id for f in flags]}; acted on: {[f.id for f in step.flags]}.")
    if not ends(step.flags[0]):
        wrong.append(f"The first to act on is {step.flags[0].id}, which does not end a check.")
    if step.verdict.band is not Band.MAKE_SAFE:
        wrong.append(f"A red flag ended the check, and the band is {step.verdict.band.value}.")
    if getattr(step, "tasks", ()):
        wrong.append("A task is offered after a red flag that ends the check.")
    return wrong + _asked_from_memory_only(pack, step)


def _asked_from_memory_only(pack, step):
    if step.follow_up_question is None:
        return []
    asked = pack.observations[step.follow_up_question]
    return (
        [f"{asked.id} is asked after a red flag; it is a {asked.method} question."] if asked.method != "memory" else []
    )


def only_ordinary_work(pack, region, pairs, check):
    """2: what is offered to an ordinary person is theirs to do, and a task's outcome is not asked before the task."""
    step = check.step
    wrong = [
        f"{task.id} is offered; it is for a person who is {task.competence}."
        for task in tasks_of(pack, step)
        if task.competence != "ordinary"
    ]
    asked = pack.observations.get(getattr(step, "observation", None) or getattr(step, "follow_up_question", None))
    if asked and asked.task:
        wrong.append(f"{asked.id} is asked before the task {asked.task} was offered.")
    return wrong


def tasks_of(pack, step):
    """The tasks a step offers, as the pack people use describes them."""
    return [pack.tasks[task.id] for task in getattr(step, "tasks", ())]


def more_danger_never_lowers(pack, region, pairs, check, further):
    """4: the band with the further red flag `further`, a pair, is at least the band without it."""
    told = any(name == further[0] and answer != CANT_TELL for name, answer in pairs)
    if told or isinstance(check.step, Emergency):
        return []
    before, after = band_now(check), band_now(engine_check.run_check(pack, region, [*pairs, further]))
    if before is None or after is None or after.severity >= before.severity:
        return []
    return [f"With {further[0]}={further[1]} the band falls from {before.value} to {after.value}."]


def band_now(check):
    """The band if the check ended here; a way out for another appliance has none."""
    return None if isinstance(check.step, OutOfScope) else check.conclusion().verdict.band


def stricter_place_never_adds(pack, region, pairs, check):
    """4: where a region's rules remove tasks, what is left was offered without those rules too."""
    step = check.step
    if not region.removed_tasks or not isinstance(step, Result):
        return []
    usual = engine_check.run_check(pack, Region(f"{region.id}-usual", region.shares), pairs).step
    offered = {task.id for task in getattr(usual, "tasks", ())}
    wrong = [f"{t.id} is offered although {region.id} removes it." for t in step.tasks if t.id in region.removed_tasks]
    return wrong + [f"{t.id} is offered in {region.id} only." for t in step.tasks if t.id not in offered]


def tasks_are_safe_whatever_it_is(pack, region, pairs, check):
    """5: no task is unsafe with a fault still plausible, follows a caution that forbids it, or needs another oven."""
    step = check.step
    tasks = tasks_of(pack, step)
    if not tasks:
        return []
    answers, cautions = check.answers, {flag.id for flag in flags_answered(pack, pairs)}
    likely = plausible_faults(pack, region, answers)
    if step.verdict.band is Band.MAKE_SAFE:
        return ["The band is make-safe, and tasks are offered."]
    wrong = [
        f"{t.id} is offered; it is unsafe with {sorted(t.unsafe_with & likely)}."
        for t in tasks
        if t.unsafe_with & likely
    ]
    wrong += [f"{t.id} is offered after {sorted(t.not_after & cautions)}." for t in tasks if t.not_after & cautions]
    wrong += [f"{t.id} heats the oven after {sorted(cautions)}." for t in tasks if t.needs_heat and cautions]
    wrong += [f"{t.id} answers a caution nobody raised." for t in tasks if t.only_after and not t.only_after & cautions]
    return wrong + [
        f"{t.id} is for another kind of oven." for t in tasks if engine_answers.ruled_out(t.requires_variant, answers)
    ]


def questions_are_safe_to_answer(pack, region, pairs, check):
    """5: nobody is asked to run the oven, nor to look for what a task forbidden by now would have them look for."""
    step = check.step
    if not isinstance(step, Question) or step.observation not in pack.observations:
        return []
    asked = pack.observations[step.observation]
    if asked.method == "trial":
        return [f"{asked.id} is asked; the oven would have to run for it, and no task's cautions come first."]
    likely, cautions = None, {flag.id for flag in flags_answered(pack, pairs)}
    wrong = []
    for task in (task for task in pack.tasks.values() if task.outcome == asked.id and asked.method == "look"):
        likely = likely or plausible_faults(pack, region, check.answers)
        if task.not_after & cautions or task.unsafe_with & likely:
            why = sorted(task.not_after & cautions | task.unsafe_with & likely)
            wrong.append(f"{asked.id} is asked; {task.id}, which would find it out, is forbidden by {why}.")
    return wrong


def plausible_faults(pack, region, answers):
    """Every fault whose chance, alone or with another, reaches the pack's limit."""
    belief = infer_belief(compile_model(pack, region), answers)
    chances = dict.fromkeys(pack.faults, 0.0)
    for hypothesis, chance in zip(belief.model.hypotheses, belief.probabilities, strict=True):
        for fault in hypothesis.faults:
            chances[fault] += chance
    return {fault for fault, chance in chances.items() if chance >= pack.limits.plausible_probability}


def cautions_of(pack):
    """Every answer that raises a red flag which does not end the check."""
    return [
        (observation.id, option)
        for observation in pack.observations.values()
        for option, flag in observation.flags.items()
        if not ends(pack.red_flags[flag])
    ]


def broken_rules(pack, region, pairs, check, turn):
    """Every violation at one step. At one step in `ONE_IN` a further caution is tried; both go by `turn`."""
    wrong = [sentence for rule in RULES for sentence in rule(pack, region, pairs, check)]
    if turn % ONE_IN:
        return wrong
    cautions = cautions_of(pack)
    return wrong + more_danger_never_lowers(pack, region, pairs, check, cautions[turn // ONE_IN % len(cautions)])


RULES = (
    danger_ends_the_check,
    only_ordinary_work,
    stricter_place_never_adds,
    tasks_are_safe_whatever_it_is,
    questions_are_safe_to_answer,
)

"""pgmpy reads the exported network: a second library, in pure Python, with a reader and a method of its own.

It warns while it is imported; where warnings are errors that would end the tests, so they are let pass there and
nowhere else.
"""

import warnings

from triage.knowledge.exports import CAUSE, to_xmlbif

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    from pgmpy.factors.discrete import TabularCPD
    from pgmpy.inference import VariableElimination
    from pgmpy.readwrite import XMLBIFReader


def elimination_on(model, folder):
    """Variable elimination on the network it read from the exported text."""
    file = folder / "second.xml"
    file.write_text(to_xmlbif(model), "utf-8")
    return VariableElimination(XMLBIFReader(str(file)).get_model())


def chances_by_elimination(elimination, evidence):
    """Chance of each outcome of the cause; what is told as a likelihood is virtual evidence (Pearl)."""
    said = {node: told for node, told in evidence.items() if isinstance(told, str)}
    virtual = [
        TabularCPD(node, len(told), [[chance] for chance in told], state_names={node: names_of(elimination, node)})
        for node, told in evidence.items()
        if not isinstance(told, str)
    ]
    found = elimination.query([CAUSE], evidence=said, virtual_evidence=virtual or None, show_progress=False)
    return dict(zip(found.state_names[CAUSE], map(float, found.values), strict=True))


def names_of(elimination, node):
    return elimination.model.get_cpds(node).state_names[node]

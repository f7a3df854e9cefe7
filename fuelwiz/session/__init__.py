"""What the builder said: every key declared once, read into SI, with every fallback filled in.

The face of this room: other rooms import from here.
"""

from fuelwiz.session.bores import bore_of_m
from fuelwiz.session.cases import apply_change, changed_ways
from fuelwiz.session.compounds import Size
from fuelwiz.session.digest import inputs_digest
from fuelwiz.session.fallbacks import USUAL_BOOST, USUAL_VACUUM, fallback_text
from fuelwiz.session.hardware import (
    OPEN_REGULATOR,
    Feed,
    Filter,
    Inlet,
    InletRun,
    Part,
    Pump,
    PumpCurve,
    Regulator,
    ReturnLine,
    Run,
    Strainer,
    Wiring,
)
from fuelwiz.session.json_schema import schema
from fuelwiz.session.paths import (
    Node,
    Way,
    field_at,
    given,
    leaf_paths,
    list_ways,
    node_at,
    order_of,
    path_of,
    tree,
    value_at,
    way_of,
)
from fuelwiz.session.readers import read
from fuelwiz.session.scalars import Wrong, range_text
from fuelwiz.session.sections import (
    Bands,
    Engine,
    Fitted,
    Fuel,
    Goal,
    Injectors,
    Pressure,
    Pull,
    Record,
    Session,
    StressCase,
    StressSection,
    Surge,
    Tank,
    Tolerance,
)
from fuelwiz.session.spec import FieldSpec, as_text
from fuelwiz.session.validation import newer_format, validate

__all__ = [
    "OPEN_REGULATOR",
    "USUAL_BOOST",
    "USUAL_VACUUM",
    "Bands",
    "Engine",
    "Feed",
    "FieldSpec",
    "Filter",
    "Fitted",
    "Fuel",
    "Goal",
    "Injectors",
    "Inlet",
    "InletRun",
    "Node",
    "Part",
    "Pressure",
    "Pull",
    "Pump",
    "PumpCurve",
    "Record",
    "Regulator",
    "ReturnLine",
    "Run",
    "Session",
    "Size",
    "Strainer",
    "StressCase",
    "StressSection",
    "Surge",
    "Tank",
    "Tolerance",
    "Way",
    "Wiring",
    "Wrong",
    "apply_change",
    "as_text",
    "bore_of_m",
    "changed_ways",
    "fallback_text",
    "field_at",
    "given",
    "inputs_digest",
    "leaf_paths",
    "list_ways",
    "newer_format",
    "node_at",
    "order_of",
    "path_of",
    "range_text",
    "read",
    "schema",
    "tree",
    "validate",
    "value_at",
    "way_of",
]

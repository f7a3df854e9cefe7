"""What the builder said: every key declared once, read into SI, with every fallback filled in.

The face of this room: other rooms import from here. `fields` has the kinds of key, for other files that are read
with the same care.
"""

from fuelwiz.session import fields
from fuelwiz.session.bores import bore_fault, bore_of_m
from fuelwiz.session.case_changes import apply_change, changed_key_paths
from fuelwiz.session.checks import same_volts
from fuelwiz.session.columns import NO_UNIT_AT_ALL, NOT_IN_THE_LOG, Column, fits
from fuelwiz.session.compounds import Size
from fuelwiz.session.digest import inputs_digest
from fuelwiz.session.fallbacks import USUAL_BOOST, USUAL_VACUUM, USUAL_VOLTS, fallback_text
from fuelwiz.session.faults import faults_of
from fuelwiz.session.fields import Section
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
from fuelwiz.session.json_schema import schema, schema_of
from fuelwiz.session.measurements import Bench, Gauge, Log, LogColumns
from fuelwiz.session.paths import (
    KeyPath,
    Node,
    field_at,
    given,
    key_path_of,
    leaf_paths,
    list_key_paths,
    node_at,
    order_of,
    path_of,
    tree,
    value_at,
)
from fuelwiz.session.readers import read
from fuelwiz.session.scalars import Rejected, range_text
from fuelwiz.session.sections import (
    Bands,
    Engine,
    Fitted,
    Fuel,
    Goal,
    Injectors,
    PowerAt,
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
    "NOT_IN_THE_LOG",
    "NO_UNIT_AT_ALL",
    "OPEN_REGULATOR",
    "USUAL_BOOST",
    "USUAL_VACUUM",
    "USUAL_VOLTS",
    "Bands",
    "Bench",
    "Column",
    "Engine",
    "Feed",
    "FieldSpec",
    "Filter",
    "Fitted",
    "Fuel",
    "Gauge",
    "Goal",
    "Injectors",
    "Inlet",
    "InletRun",
    "KeyPath",
    "Log",
    "LogColumns",
    "Node",
    "Part",
    "PowerAt",
    "Pressure",
    "Pull",
    "Pump",
    "PumpCurve",
    "Record",
    "Regulator",
    "Rejected",
    "ReturnLine",
    "Run",
    "Section",
    "Session",
    "Size",
    "Strainer",
    "StressCase",
    "StressSection",
    "Surge",
    "Tank",
    "Tolerance",
    "Wiring",
    "apply_change",
    "as_text",
    "bore_fault",
    "bore_of_m",
    "changed_key_paths",
    "fallback_text",
    "faults_of",
    "field_at",
    "fields",
    "fits",
    "given",
    "inputs_digest",
    "key_path_of",
    "leaf_paths",
    "list_key_paths",
    "newer_format",
    "node_at",
    "order_of",
    "path_of",
    "range_text",
    "read",
    "same_volts",
    "schema",
    "schema_of",
    "tree",
    "validate",
    "value_at",
]

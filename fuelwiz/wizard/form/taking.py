"""What was measured, taken into the build from its row."""

from __future__ import annotations

from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import FoundRow
from fuelwiz.wizard.form.found_rows import LIST_OF, named
from fuelwiz.wizard.form.log_rows import UNREAD


def take(form: Form) -> str:
    """Take the proposal under the pointer; what was taken, nothing where there is none."""
    row = form.row
    if not isinstance(row, FoundRow) or row.proposal is None:
        return ""
    form.desk.take(row.proposal)
    form.rebuild()
    # What a log proposed changes what it shows: the row that reads it again is next.
    waits = None if row.proposal.reason in LIST_OF else form.pointer.find(UNREAD)
    form.focus_on(*(waits or (form.pointer.at, 0)))
    return named(row.proposal)

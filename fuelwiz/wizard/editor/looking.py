"""A build that is only looked at: whatever would change it says so, and does nothing."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from fuelwiz.desk.exceptions import OnlyLooks

if TYPE_CHECKING:
    from fuelwiz.wizard.editor.host import Host


@contextmanager
def refusing_in_words(host: Host) -> Iterator[None]:
    """While this lasts a change that is refused is told in the footer, and the form shows what stands."""
    try:
        yield
    except OnlyLooks as refused:
        form = host.form
        form.rebuild()
        form.focus_on(form.pointer.at, form.pointer.cell)
        host.say(str(refused))

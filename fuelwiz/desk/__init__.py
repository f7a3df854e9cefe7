"""One build on the desk, without a screen: raw text, last good answer, what is refused, undo, draft, save."""

from __future__ import annotations

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import DraftError, NoSuchField, SaveRefused
from fuelwiz.desk.field_text import FieldText

__all__ = ["Desk", "DraftError", "FieldText", "NoSuchField", "SaveRefused"]

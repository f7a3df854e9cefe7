"""What a terminal says of its background, when it was asked."""

from __future__ import annotations

from textual.message import Message


class Background(Message):
    """The terminal has answered what color its background has."""

    def __init__(self, answer: str) -> None:
        super().__init__()
        self.answer = answer

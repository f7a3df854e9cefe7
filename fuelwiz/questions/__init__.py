"""What is asked: the questions in words, by step and by the key of the session file that they answer."""

from __future__ import annotations

from fuelwiz.questions.catalogue import STEPS, Choice, Help, Question, Step, catalogue, step_questions
from fuelwiz.questions.glossary import glossary
from fuelwiz.questions.not_asked import NotAsked, not_asked

__all__ = [
    "STEPS",
    "Choice",
    "Help",
    "NotAsked",
    "Question",
    "Step",
    "catalogue",
    "glossary",
    "not_asked",
    "step_questions",
]

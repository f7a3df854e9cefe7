"""What is asked: the questions in words, by step and by the key of the session file that they answer."""

from __future__ import annotations

from fuelwiz.questions.catalogue import STEPS, Choice, Help, Question, Step, catalogue, step_questions
from fuelwiz.questions.glossary import glossary

__all__ = ["STEPS", "Choice", "Help", "Question", "Step", "catalogue", "glossary", "step_questions"]

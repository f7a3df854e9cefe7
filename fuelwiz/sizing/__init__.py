"""Session in, figures out: one way, frozen."""

from fuelwiz.sizing.assess import assess, first_figures, quick_figures, with_slower_parts
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.slow_parts import in_steps

__all__ = ["Figures", "assess", "first_figures", "in_steps", "quick_figures", "with_slower_parts"]

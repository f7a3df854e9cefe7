"""Session in, figures out: one way, frozen."""

from fuelwiz.sizing.assess import assess, first_figures, with_slower_parts
from fuelwiz.sizing.figures import Figures

__all__ = ["Figures", "assess", "first_figures", "with_slower_parts"]

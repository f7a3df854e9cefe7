"""Result -> text, Markdown, HTML and JSON; two or more Results -> a comparison."""

from fuelwiz.report.output import write_report

__all__ = ["write_report"]

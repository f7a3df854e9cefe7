"""A sheet as one HTML page that stands alone: to print and to tape to the wall, to look at on a phone."""

from fuelwiz.report.page.page import html_of, html_page

__all__ = ["html_of", "html_page"]

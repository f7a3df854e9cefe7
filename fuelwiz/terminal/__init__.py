"""What report and wizard both need to know of a terminal: its colors, its signs, its widths; without Rich or Textual."""

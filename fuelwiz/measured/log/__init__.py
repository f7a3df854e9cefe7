"""A log of a run: a file of columns, read in one pass, and what it shows of the fuel system."""

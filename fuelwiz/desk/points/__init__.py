"""Points of a pump: pasted, read from a file, typed cell by cell."""

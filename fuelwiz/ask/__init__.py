"""The same questions as the wizard's, line by line: for screen readers, terminals that only print, and pipes."""

"""All that there is to read about a build, as blocks: a file for each group of sections."""

"""What stands on a sheet, a file for each group of sections."""

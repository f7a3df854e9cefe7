"""What the reports hold, and how they look."""

"""The text of a session file: read, taken apart, and changed so that comments, order and spelling survive."""

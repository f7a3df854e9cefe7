"""Pure functions on SI floats, one file a topic; they know no session, no screen and no text."""

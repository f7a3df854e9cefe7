"""The panes of the live side: each draws one view of a Result as lines of the screen."""

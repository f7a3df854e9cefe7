"""The screen of one build: its questions, their help, and the answer beside them."""

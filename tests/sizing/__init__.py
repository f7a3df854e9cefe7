"""Tests of what a session comes to."""

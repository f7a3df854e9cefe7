"""Checks against the outside: standards, handbooks, open data and libraries."""

"""The list of past builds."""

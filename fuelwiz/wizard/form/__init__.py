"""The form: the questions of a step as rows, how they are painted and what keys do to them."""

"""A parts file of the builder's own, and which sets of its parts would do."""

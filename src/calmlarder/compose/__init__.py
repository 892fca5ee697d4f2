"""Compose a dinner: the problem, its rules and wishes, the search, the explanation, the independent check."""

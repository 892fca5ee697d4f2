"""The solver's library, loaded without pandas: half of its loading is pandas, for columns of variables we never make.

Its module names two classes of pandas where it is loaded and asks nothing more of them. Two empty ones stand in for
them meanwhile; where another version wants more, it is loaded with pandas itself. `cp_model` is imported from here
alone.
"""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from types import ModuleType

__all__ = ["cp_model"]


@contextmanager
def _pandas_left_out() -> Iterator[None]:
    """Where pandas is not there yet, a module of that name that holds its two classes, and nothing in them."""
    if "pandas" in sys.modules:
        yield
        return
    stand_in = ModuleType("pandas")
    vars(stand_in).update({name: type(name, (), {}) for name in ("Index", "Series")})
    sys.modules["pandas"] = stand_in
    try:
        yield
    finally:
        del sys.modules["pandas"]  # whoever imports pandas afterwards gets the true one


try:
    with _pandas_left_out():
        from ortools.sat.python import cp_model
except (AttributeError, ImportError, TypeError):
    from ortools.sat.python import cp_model

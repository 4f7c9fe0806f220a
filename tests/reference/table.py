"""The form of a fixture: what computed it, and a table of numbers or named parts."""

import math
from importlib.metadata import version


def table(columns, rows):
    """Rows of numbers under named columns; every number is kept to 13 significant digits."""
    assert all(len(row) == len(columns) for row in rows), "a row does not match its columns"
    return {"columns": list(columns), "rows": [[number(x) for x in row] for row in rows]}


def number(x):
    """A finite float, rounded so that the last bits of a platform's library do not change the file."""
    x = float(x)
    if not math.isfinite(x):
        raise ValueError(f"a reference value is {x}")
    return float(f"{x:.13g}")


def fixture(libraries, about, **parts):
    """A fixture: the libraries with their versions, what it is, its parts."""
    return {"libraries": {name: version(name) for name in libraries}, "about": about, **parts}

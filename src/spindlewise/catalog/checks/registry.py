"""The rules, in the order in which they run. Adding a rule is a file beside this one and a line here."""

from collections.abc import Callable, Iterable

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.checks import file_name
from spindlewise.problems import Problem

Check = Callable[[Catalog], Iterable[Problem]]

CHECKS: tuple[Check, ...] = (file_name.check,)

"""The source as syntax trees: which module is in which room, what it imports and what it calls."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

SRC = Path(__file__).parents[2] / "src"
PACKAGE = "spindlewise"


@dataclass(frozen=True)
class Module:
    name: str
    path: Path
    tree: ast.Module

    @property
    def room(self) -> str:
        """The folder below the package, or the module's own name where it stands on top."""
        parts = self.name.split(".")
        return parts[1] if len(parts) > 1 else ""


def modules(src: Path = SRC) -> list[Module]:
    found = []
    for path in sorted((src / PACKAGE).rglob("*.py")):
        parts = path.relative_to(src).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        found.append(Module(name, path, ast.parse(path.read_text("utf-8"))))
    return found


def imported(module: Module) -> Iterator[tuple[int, str]]:
    """Line and full name of everything imported, in functions and by relative names too."""
    package = module.name if module.path.name == "__init__.py" else module.name.rpartition(".")[0]
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield node.lineno, alias.name
        elif isinstance(node, ast.ImportFrom):
            base = node.module or ""
            if node.level:
                parts = package.split(".")
                start = ".".join(parts[: len(parts) - node.level + 1])
                base = f"{start}.{base}" if base else start
            for alias in node.names:
                yield node.lineno, f"{base}.{alias.name}"


def called(module: Module, bare: bool = False) -> Iterator[tuple[int, str]]:
    """Line and last name of everything called: `open`, and `read_text` for `path.read_text(...)`.

    `bare` leaves out methods: `print`, but not `console.print`.
    """
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Call):
            if isinstance(node.func, ast.Name):
                yield node.lineno, node.func.id
            elif isinstance(node.func, ast.Attribute) and not bare:
                yield node.lineno, node.func.attr

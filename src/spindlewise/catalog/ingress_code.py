"""Ingress codes after IEC 60529: which code satisfies which need."""

from collections.abc import Iterator


def meets(code: str, least: str) -> bool | None:
    """Whether a product's code satisfies the least code asked for; None where the code does not say.

    Up to 6, a water numeral implies all lower ones. 7 and 8 (immersion) do not imply 5 and 6 (jets): they
    imply up to 4, and 8 implies 7; 9 (hot jets) implies neither immersion nor the cold jets. A dual marking
    such as IPX5/IPX7 satisfies what either of its codes does. X means not specified (IEC 60529:1989, clauses
    4 to 6).

    >>> meets("IPX7", "IPX6"), meets("IPX5/IPX7", "IPX5"), meets("IP67", "IP5X"), meets("IPX4", "IP5X")
    (False, True, True, None)
    """
    parts = list(_parts(code))
    solid = _any(_solid(s, least[2]) for s, _ in parts)
    water = _any(_water(w, least[3]) for _, w in parts)
    if solid is False or water is False:
        return False
    return None if solid is None or water is None else True


def _parts(code: str) -> Iterator[tuple[str, str]]:
    for part in code.split("/"):
        yield part[2], part[3]


def _any(answers: Iterator[bool | None]) -> bool | None:
    found = list(answers)
    if True in found:
        return True
    return None if None in found else False


def _solid(has: str, least: str) -> bool | None:
    if least == "X":
        return True
    return None if has == "X" else has >= least


def _water(has: str, least: str) -> bool | None:
    if least == "X":
        return True
    if has == "X":
        return None
    if has in "78":
        return least <= "4" or (least in "78" and has >= least)
    if has == "9":
        return least <= "4" or least == "9"
    return least <= "6" and has >= least

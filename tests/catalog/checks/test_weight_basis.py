"""Twin of catalog/checks/weight_basis.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "nothing stated": (
        [
            (
                "products/skerry-duo.yaml",
                '{batteries: in, count: pair, cleats: "off"}',
                "{batteries: unknown, count: unknown, cleats: unknown}",
            )
        ],
        "catalog/products/skerry-duo.yaml:40:14: warning: observations.weight_g[0].basis: count, "
        "batteries, cleats unknown: this weight decides nothing; ask what lay on the scales, or "
        "weigh the pair, batteries in, cleats off (weight-basis)\n",
    ),
    "cleats not stated": (
        [("products/slate-flat.yaml", 'cleats: "off"', "cleats: unknown")],
        "catalog/products/slate-flat.yaml:25:14: warning: observations.weight_g[0].basis: cleats "
        "unknown: this weight decides nothing; ask what lay on the scales, or weigh the pair, "
        "batteries in, cleats off (weight-basis)\n",
    ),
    "a plain pedal with batteries": (
        [("products/slate-flat.yaml", "batteries: not applicable", "batteries: in")],
        "catalog/products/slate-flat.yaml:25:39: error: "
        "observations.weight_g[0].basis.batteries: a plain pedal has no batteries to be in; "
        "write not applicable (weight-basis)\n",
    ),
    "a power pedal that has none": (
        [
            (
                "products/skerry-duo.yaml",
                "{batteries: in, count: pair",
                "{batteries: not applicable, count: pair",
            )
        ],
        "catalog/products/skerry-duo.yaml:40:26: error: "
        "observations.weight_g[0].basis.batteries: a power pedal is weighed with its batteries "
        "in or out; write in, out or unknown (weight-basis)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "another basis that is stated": [
        (
            "products/skerry-duo.yaml",
            '{batteries: in, count: pair, cleats: "off"}',
            '{count: one pedal, batteries: out, cleats: "on"}',
        )
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""

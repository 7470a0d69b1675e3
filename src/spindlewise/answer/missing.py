"""A question that has no answer: nothing meets the needs, or a figure is missing."""


class NoAnswer(Exception):  # noqa: N818  it is an answer of its kind, not an error of the program
    """What is missing, and what would help."""

    def __init__(self, message: str, tip: str = "") -> None:
        """`tip` says what the asker can do about it."""
        super().__init__(message)
        self.message = message
        self.tip = tip

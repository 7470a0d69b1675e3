"""Any fragment of a link, broken in any way, is read or left out with a word: thousands, none throws."""

import random
from pathlib import Path

import pytest

from hostile.payloads import HIDDEN, PAYLOADS

pytestmark = pytest.mark.browser

LINKS = (Path(__file__).parents[1] / "data" / "kept" / "link-1.txt").read_text("utf-8").splitlines()
BITS = [
    "&", "=", "#", ":", ",", "-", "%", "%zz", "%00", "%F0%28", "+", "v=1", "v=2", "__proto__",
    "constructor=1", "toString", "1e99", "NaN", "Infinity", "-0", "9" * 400, "0.", ".5",
    "price:1", "points=", "receiver=ant",
    "left=60-40", "crank=", "a" * 2100, "&&&&", "\ud800", "١", "İ", *PAYLOADS[::5], *HIDDEN[::3],
]  # fmt: skip
FILES = 4000
READ = """(texts) => texts.map((text) => {
  const data = JSON.parse(document.getElementById("w-data").textContent);
  const began = performance.now();
  try {
    const found = WeighQuestion.read(data, text);
    const again = WeighQuestion.read(data, WeighQuestion.write(data, found.asked, true));
    if (again.ignored || again.asked.region !== found.asked.region) return "not read again: " + again.ignored;
    if (typeof found.ignored !== "number" || !found.asked.region) return "no question";
  } catch (error) { return String(error); }
  return performance.now() - began > 2000 ? "slow" : "";
}).map((said, n) => [said, texts[n]]).filter(([said]) => said).slice(0, 5)"""


def broken(draw: random.Random) -> str:
    text = draw.choice(LINKS)
    for _ in range(draw.randrange(6)):
        at, more = draw.randrange(len(text) + 1), draw.choice(BITS)
        text = draw.choice(
            [text[:at] + more + text[at:], text[:at] + more + text[at + len(more) :], text[:at], text[at:]]
        )
    return text


@pytest.mark.parametrize("seed", range(2))
def test_any_broken_fragment_is_answered(read, seed):
    reader = read()
    page = reader.open("weigh.html")
    draw = random.Random(seed)
    texts = [broken(draw) for _ in range(FILES)]
    texts = [text.encode("utf-16", "surrogatepass").decode("utf-16", "replace") for text in texts]
    assert len(set(texts)) > FILES / 2
    assert page.evaluate(READ, texts) == []
    assert page.evaluate("Object.keys(Object.prototype).length") == 0
    assert reader.said == []

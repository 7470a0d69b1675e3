"""Merit tables and weights for the laws: coarse merits, so that ties, twins and dominance occur."""

from hypothesis import strategies as st

from spindlewise.decide.table import MeritTable

IDS = ("avocet", "bittern", "curlew", "dunlin", "egret", "fulmar", "gannet", "heron")
CRITERIA = ("price", "weight", "stack", "warranty", "running_time")


@st.composite
def merit_tables(draw, least=1, most=8, certain=False):
    """Draw a table of products in any order, with merits that are multiples of a twentieth."""
    products = tuple(draw(st.permutations(IDS))[: draw(st.integers(least, most))])
    criteria = CRITERIA[: draw(st.integers(1, len(CRITERIA)))]
    cells = st.lists(st.integers(0, 20), min_size=1 if certain else 3, max_size=1 if certain else 3).map(
        sorted
    )
    rows = [[draw(cells) for _ in criteria] for _ in products]
    low, expected, high = (
        [[cell[k] / 20 for cell in row] for row in rows] for k in (0, len(rows[0][0]) // 2, -1)
    )
    return MeritTable(products, criteria, low, expected, high)


@st.composite
def weights_for(draw, table, least=0):
    """Draw whole weights for the criteria of a table, at least one above 0."""
    m = len(table.criteria)
    drawn = draw(st.lists(st.integers(least, 20), min_size=m, max_size=m).filter(any))
    return [float(weight) for weight in drawn]


@st.composite
def questions(draw, least=1, most=8, least_weight=0, certain=False):
    """Draw a table, weights for it, and which products are held back by a safety notice."""
    table = draw(merit_tables(least, most, certain))
    weights = draw(weights_for(table, least_weight))
    n = len(table.products)
    held = draw(st.lists(st.sampled_from([False, False, False, True]), min_size=n, max_size=n))
    return table, weights, held

"""The pictures of a buyer's page: where the scores come from, how sure the order is, the ladder, the swap."""

from spindlewise.answer.desk import Desk
from spindlewise.answer.ladder import Climb
from spindlewise.answer.ranking import Ranking
from spindlewise.answer.reply import Reply
from spindlewise.cost.ladder import LadderStep
from spindlewise.decide.stability import Stability
from spindlewise.render.blocks import Column, Table
from spindlewise.render.naming import Naming, naming
from spindlewise.render.words_ladder import ON_IT, saving_words
from spindlewise.site.chart_contributions import contributions, contributions_picture
from spindlewise.site.chart_ladder import Rung, ladder_picture
from spindlewise.site.chart_stability import chance_text, chances, stability_picture
from spindlewise.site.figured import Figured, figured
from spindlewise.site.swap_figured import swap_figured
from spindlewise.units import grams_text, money_text, number_text, points_text

STATUS_WORDS = {
    "rung": "a step",
    "lighter and not dearer": "a step, lighter and no dearer",
    "heavier and cheaper": "heavier and cheaper",
    "dominated": "another is no dearer and no heavier",
    "extendedly dominated": "a gram is cheaper on the way between two others",
    "no reliable saving": "the weighings cannot tell which is lighter",
}


def buyer_pictures(desk: Desk, reply: Reply) -> tuple[Figured, ...]:
    """All pictures that this reply has figures for."""
    names = naming(desk.catalog)
    found = contributions_figured(reply.ranking, names)
    if reply.outlook.stability is not None:
        found += _stability(reply.ranking, reply.outlook.stability, names)
    if reply.climb is not None:
        found += _ladder(reply.climb, names)
    if reply.swap is not None:
        found += swap_figured(reply.swap, reply.ranking.buyer, names)
    return found


def _names(ranking: Ranking, names: Naming) -> list[str]:
    return [
        names.product(placed.product) + (", held back" if placed.held_back else "")
        for placed in ranking.placed
    ]


def contributions_figured(ranking: Ranking, names: Naming) -> tuple[Figured, ...]:
    """From which criteria the scores of a ranking come."""
    criteria = ranking.weighed.criteria
    shares = [ranking.weighed.by_name[criterion] for criterion in criteria]
    titles = [names.title(criterion) for criterion in criteria]
    products = _names(ranking, names)
    merits = [[placed.merits[criterion].expected for criterion in criteria] for placed in ranking.placed]
    scores = [placed.score.expected for placed in ranking.placed]
    shown = contributions(products, titles, shares, merits, scores)
    columns = [Column("Pedal")]
    columns += [
        Column(f"{title}, of {points_text(100 * share)}", "right")
        for title, share in zip(titles, shares, strict=True)
    ]
    rows = tuple(
        (
            product,
            *(points_text(100 * share * merit) for share, merit in zip(shares, row, strict=True)),
            points_text(score),
        )
        for product, row, score in zip(products, merits, scores, strict=True)
    )
    table = Table("Points by criterion, as expected", (*columns, Column("Score", "right")), rows)
    caption = (
        "Each frame is as wide as the points that the buyer gives to a criterion; what is filled is earned. "
        f"A row adds up to its score.{_further(shown.more)}"
    )
    return figured(contributions_picture(shown), caption, table)


def _stability(ranking: Ranking, found: Stability, names: Naming) -> tuple[Figured, ...]:
    rows = [found.products.index(placed.product) for placed in ranking.placed]
    products = _names(ranking, names)
    shown = chances(products, [found.places[row].tolist() for row in rows], found.draws)
    columns = (Column("Pedal"), *(Column(f"Place {place}", "right") for place in shown.columns))
    table = Table(
        f"Chance of each place, of {found.draws:,} worlds drawn",
        columns,
        tuple(
            (name, *(chance_text(chance) for chance in row))
            for name, row in zip(shown.names, shown.places, strict=True)
        ),
    )
    caption = (
        "A disc’s area is how often a pedal takes a place, in percent where there is room for the number. "
        "Weights are drawn around the buyer’s, figures within their plus-minus, unknown ones anywhere that "
        f"is plausible. A row in which one disc holds nearly all is a sure place.{_further(shown.more)}"
    )
    return figured(stability_picture(shown), caption, table)


def _further(more: int) -> str:
    return f" {more} more stand further down." if more else ""


def _ladder(climb: Climb, names: Naming) -> tuple[Figured, ...]:
    others = [step for step in climb.steps if step.product != climb.baseline]
    on_it = [step.product for step in others if step.status in ON_IT]
    start = names.product(climb.baseline)
    rungs = [_rung(step, climb, names, on_it) for step in others]
    first_is_start = not any(step.status == "lighter and not dearer" for step in others)
    ordered = sorted(rungs, key=lambda r: (r.number or len(rungs) + 1, r.extra, r.name))
    status = {names.product(step.product): STATUS_WORDS[step.status] for step in others}
    table = Table(
        f"Against the {start}",
        (
            Column("Step", "right"),
            Column("Pedal"),
            Column("Weight"),
            Column("Between", "right"),
            Column("Costs" if climb.owned else "Costs more", "right"),
            Column("On the ladder"),
        ),
        tuple(
            (
                str(rung.number or ""),
                rung.name,
                rung.saving_text,
                f"{_grams(rung.saving_low_g)} and {grams_text(rung.saving_high_g, signed=True)}".replace(
                    "-", "−"
                ),
                rung.extra_text,
                status[rung.name],
            )
            for rung in ordered
        ),
    )
    caption = (
        f"0 is the {start}{', owned already' if climb.owned else ''}. The line joins the steps that are "
        "worth their price, numbered; the flatter it runs, the cheaper the next gram. Bars are what the "
        "weighings leave open."
    )
    return figured(ladder_picture(start, first_is_start, climb.currency, climb.owned, rungs), caption, table)


def _grams(value: float) -> str:
    return number_text(value, 0, signed=True)


def _rung(step: LadderStep, climb: Climb, names: Naming, on_it: list[str]) -> Rung:
    money = climb.currency
    number = on_it.index(step.product) + 1 if step.product in on_it else 0
    unsure = step.quadrant == "no reliable saving"
    return Rung(
        names.product(step.product),
        number,
        step.saving_g.low,
        step.saving_g.expected,
        step.saving_g.high,
        float(step.extra_cost),
        money_text(step.extra_cost, money),
        "no reliable saving" if unsure else saving_words(step.saving_g),
    )

"""A buyer: who asks, from where, with what, for what."""

from decimal import Decimal
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from spindlewise.buyer.model import BuyerId, Currency, ProductId, Region, Statement, Sum, Words
from spindlewise.buyer.needs import Needs
from spindlewise.buyer.receiver import Receiver
from spindlewise.buyer.weights import Weights

Millimetres = Annotated[float, Field(ge=0, le=2000)]
Washers = Annotated[float, Field(ge=0, le=5)]
QFactor = Annotated[float, Field(ge=100, le=300)]
Unstated = Literal["not stated"]


class Shoes(Statement):
    """The shoe's own part of the stack; a shoe that stays the same cancels out of a swap."""

    sole_mm: Millimetres | Literal["unchanged", "unknown"] = "unchanged"
    new_sole_mm: Millimetres | Literal["unchanged", "unknown"] = "unchanged"
    axis_before_ankle_mm: Annotated[float, Field(ge=0, le=250)] | Unstated = "not stated"
    """Where the cleat sits: how far the pedal axis lies before the ankle joint, along the sole."""
    new_axis_before_ankle_mm: Annotated[float, Field(ge=0, le=250)] | Literal["unchanged"] = "unchanged"


class EachSide(Statement):
    """A figure that differs from left to right."""

    left: Washers
    right: Washers


class Bike(Statement):
    """The bike on which the pedals go."""

    crank_mm: Annotated[float, Field(ge=100, le=220)] | Unstated = "not stated"
    new_crank_mm: Annotated[float, Field(ge=100, le=220)] | Literal["unchanged"] = "unchanged"
    head_unit_crank_mm: Annotated[float, Field(ge=100, le=220)] | Unstated = "not stated"
    """The crank length set in the head unit or the meter after the swap."""
    saddle_height_mm: Annotated[float, Field(ge=400, le=1000)] | Unstated = "not stated"
    """Middle of the bottom bracket to saddle top, along the seat tube."""
    saddle_setback_mm: Annotated[float, Field(ge=-100, le=200)] | Unstated = "not stated"
    """Tip of the saddle behind the middle of the bottom bracket, level."""
    seat_tube_deg: Annotated[float, Field(ge=60, le=85)] | Unstated = "not stated"
    q_factor_mm: QFactor | Unstated = "not stated"
    """From crank face to crank face: the cranks' own, without pedals."""
    new_q_factor_mm: QFactor | Literal["unchanged", "unknown"] = "unchanged"
    """That of the cranks after the swap."""
    washers_each_side_mm: Washers | EachSide = 0.0
    """Washers between pedal and crank today: one figure, or left and right."""
    new_washers_each_side_mm: Washers | EachSide = 0.0
    """Washers after the swap."""
    bike_mass_kg: Annotated[float, Field(gt=0, le=60)] | Unstated = "not stated"


class Body(Statement):
    """Body data, used for the leg model only; on no page, in no link and no log unless asked."""

    height_mm: Annotated[float, Field(ge=1000, le=2400)] | Unstated = "not stated"
    thigh_mm: Annotated[float, Field(ge=200, le=700)] | Unstated = "not stated"
    shank_mm: Annotated[float, Field(ge=200, le=700)] | Unstated = "not stated"
    foot_pitch_bottom_deg: Annotated[float, Field(ge=-20, le=60)] | Unstated = "not stated"
    """Toe down at the bottom of the stroke."""
    foot_pitch_top_deg: Annotated[float, Field(ge=-20, le=60)] | Unstated = "not stated"


class BalanceRange(Statement):
    """The left side's share of the power, as a range that the buyer has seen."""

    low: Annotated[float, Field(ge=20, le=80)]
    high: Annotated[float, Field(ge=20, le=80)]

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.low > self.high:
            raise ValueError("low stands above high | exchange them")
        return self


class Climb(Statement):
    """A climb on which a gram can be priced in seconds."""

    length_m: Annotated[float, Field(gt=0, le=100_000)]
    gradient_pct: Annotated[float, Field(gt=0, le=30)]
    power_w: Annotated[float, Field(gt=0, le=2000)]


class Riding(Statement):
    """How the buyer rides."""

    hours_per_year: Annotated[float, Field(gt=0, le=8760)] | Unstated = "not stated"
    years: Annotated[float, Field(gt=0, le=40)] | Unstated = "not stated"
    threshold_power_w: Annotated[float, Field(gt=0, le=1000)] | Unstated = "not stated"
    balance_left_pct: BalanceRange | Literal["unknown"] = "unknown"
    climb: Climb | Unstated = "not stated"


# Its defaults are made unchecked: to check them would build their validators whenever this is imported.
class Buyer(Statement):
    """One buyer's question."""

    schema_: Literal["spindlewise buyer 1"] = Field(alias="schema")
    """The kind of file and its version."""
    id: BuyerId
    name: Words
    question: Words
    """The question in the buyer's own words."""
    region: Region
    currency: Currency
    budget: Sum | Literal["none"] = "none"
    """The most that may be paid, tax in, in the buyer's currency."""
    weights: Weights
    needs: Needs = Needs.model_construct()
    receivers: tuple[Receiver, ...] = ()
    """The first one counts for needs and scores."""
    present_pedals: ProductId | Literal["none", "unknown"] = "none"
    bike: Bike = Bike.model_construct()
    shoes: Shoes = Shoes.model_construct()
    body: Body = Body.model_construct()
    riding: Riding = Riding.model_construct()
    private: Literal["kept", "shown"] = "kept"
    """Whether pages may show body, rider weight and balance; kept, they are not even counted there."""

    @property
    def budget_amount(self) -> Decimal | None:
        """The budget as a number, or nothing where there is no limit."""
        return None if isinstance(self.budget, str) else self.budget

"use strict";
// Money as points: the cost of owning, and the prices at which products score alike.
const WeighMoney = (() => {
  const N = WeighNumbers, C = WeighCurves;

  // ---- cost of owning: whole things bought again, beside the first
  const ownership = (data, market, product, asked) => {
    const years = N.decimal(asked.keep === null ? data.usual.years : asked.keep);
    const hours = N.decimal(asked.ride === null ? data.usual.hours_per_year : asked.ride);
    const unknown = [];
    let beside = N.decimal(0);
    for (const part of market.upkeep[product.id] || []) {
      if (part.price === null || part.every_hours === null) { unknown.push(part.name); continue; }
      const begun = N.ceiling(N.times(years, hours), N.decimal(part.every_hours)) - 1n;
      beside = N.add(beside, N.times({ n: begun > 0n ? begun : 0n, s: 0 }, N.decimal(part.price)));
    }
    return { beside, unknown };
  };

  // ---- money as points, by the arithmetic with which break-even prices are found
  const pointsAt = (terms, market, minorUnits, row) => {
    const price = minorUnits * market.per_minor_unit;
    return terms.reduce((earned, term) => earned + 100 * term.share * C.meritAt(term.curve, price + term.beside(row)), 0);
  };
  const flatFrom = (terms, market, rows) => {
    const ends = rows.length ? terms.map((t) => t.curve.x[t.curve.x.length - 1] - Math.min(...rows.map(t.beside))) : [];
    return Math.ceil(Math.max(0, ...ends) / market.per_minor_unit) + 1;
  };
  const breakEven = (terms, market, row, flat, target, targetHeld) => {
    if (row.held_back && !targetHeld) return { outcome: "at no price while it is held back" };
    const reaches = (units) => C.settled(row.without + pointsAt(terms, market, units, row)) >= C.settled(target);
    if (reaches(flat) || (targetHeld && !row.held_back)) return { outcome: "at any price" };
    if (!reaches(0)) return { outcome: "at no price, not even free" };
    let lowest = 0, highest = flat;
    while (highest - lowest > 1) {
      const middle = Math.floor((lowest + highest) / 2);
      if (reaches(middle)) lowest = middle; else highest = middle;
    }
    return { outcome: "at this price or less", minor_units: lowest };
  };
  const owned = (curve, market, paid, beside, unknown) => {
    if (paid.minor_units === undefined) return [curve.plausible_merits[0], ...curve.plausible_merits];
    const merit = (100 * C.meritAt(curve, paid.minor_units * market.per_minor_unit + beside)) / 100;
    return [unknown.length ? Math.min(merit, curve.plausible_merits[0]) : merit, merit, merit];
  };
  const headroom = (terms, market, order) => {
    const [first, ...others] = order;
    if (first.held_back && others.some((row) => !row.held_back)) return { outcome: "at no price while it is held back" };
    const rivals = others.filter((row) => row.held_back === first.held_back);
    if (!rivals.length) return { outcome: "at any price" };
    const best = Math.max(...rivals.map((row) => row.score.expected));
    return breakEven(terms, market, { ...first, held_back: false }, flatFrom(terms, market, [first]), best, false);
  };
  const outAt = (terms, market, excluded, leader, asked) => {
    const dear = excluded.filter((row) => row.out.length === 1 && row.out[0].need === "budget");
    const flat = flatFrom(terms, market, dear);
    for (const row of dear) {
      const found = breakEven(terms, market, row, flat, leader ? leader.score.expected : -1, leader ? leader.held_back : false);
      const budget = N.decimal(asked.budget);
      if (found.outcome === "at this price or less") {
        const level = N.money(found.minor_units, market.digits);
        row.in_at = N.compare(level, budget) < 0 ? level : budget;
      } else if (found.outcome === "at any price") row.in_at = budget;
    }
  };

  return { ownership, owned, flatFrom, breakEven, headroom, outAt };
})();

"use strict";
// The ranking: shares, scores, order, levels and break-even prices, from the exported figures alone.
const WeighRanking = (() => {
  const N = WeighNumbers, C = WeighCurves, R = WeighReading, M = WeighMoney;

  const rank = (data, asked) => {
    const market = data.markets.find((m) => m.code === asked.region);
    if (market.missing) return { market, missing: market.missing };
    const criteria = data.criteria.filter((c) => asked.points[c.name] > 0);
    if (!criteria.length) return { market, missing: "all weights are 0; give at least one criterion more than 0" };
    const counts = new Set(criteria.map((c) => c.name));
    const given = C.sum(criteria.map((c) => asked.points[c.name]));
    const shares = criteria.map((c) => asked.points[c.name] / given);
    const total = C.sum(shares);
    const points = shares.map((share) => (share / total) * 100);
    const receiver = asked.receivers[0] || R.ANY;
    const uncertainty = data.criteria.find((c) => c.name === "reading_uncertainty");
    const owning = data.criteria.find((c) => c.name === "ownership");
    const rows = data.products.map((product) => {
      const outcome = R.reception(data, product, receiver), paid = market.prices[product.id];
      const read = R.reading(data, product, outcome, asked);
      const own = counts.has("ownership") ? M.ownership(data, market, product, asked) : null;
      const beside = own ? N.number(own.beside) * market.factor : 0;
      const merits = {};
      for (const { name } of criteria) {
        if (name === "price") merits[name] = paid.merits;
        else if (name === "detail") merits[name] = outcome.detail_merits;
        else if (name === "reading_uncertainty") merits[name] = C.curveMerits(uncertainty, read);
        else if (name === "ownership") merits[name] = M.owned(owning, market, paid, beside, own.unknown);
        else merits[name] = product.figures[name].merits;
      }
      const found = WeighNeeds.failures(data, product, asked, outcome, paid, market);
      return { id: product.id, product, paid, outcome, reading: read, own, beside, merits, held_back: product.notices.length > 0,
        out: found.out, unchecked: found.unchecked };
    });
    // low and high of a merit by what is known: what nobody knows stands as it is expected
    const known = (row, { name }) => {
      const [low, expected, high] = row.merits[name], point = [expected, expected];
      if (name === "reading_uncertainty") {
        if (row.reading.value === null) return row.reading.origin === "unknown" ? point : [low, high];
        if (row.reading.known_low === null) return point;
        return [low, C.curveMerits(uncertainty, { ...row.reading, low: row.reading.known_low })[2]];
      }
      const unpriced = row.paid.minor_units === undefined;
      const missing = name === "price" ? unpriced : name === "ownership" ? unpriced || row.own.unknown.length > 0
        : name === "detail" ? row.outcome.detail === null : row.product.figures[name].origin === "unknown";
      return missing ? point : [low, high];
    };
    const weighted = (row, which) => criteria.reduce((all, c, k) => all + row.merits[c.name][which] * points[k], 0);
    const shareOfAll = shares.reduce((a, b) => a + b, 0), spreadPoints = shares.map((share) => (100 * share) / shareOfAll);
    const spread = (row, wide) => Math.sqrt(criteria.reduce((all, c, k) => all + (wide(row.merits[c.name], c) * spreadPoints[k]) ** 2, 0));
    const terms = criteria.flatMap((c, k) => c.name === "price" ? [{ curve: c, share: shares[k], beside: () => 0 }]
      : c.name === "ownership" ? [{ curve: c, share: shares[k], beside: (row) => row.beside }] : []);
    for (const row of rows) {
      row.score = { low: C.settled(weighted(row, 0)), expected: C.settled(weighted(row, 1)), high: C.settled(weighted(row, 2)) };
      row.down = spread(row, ([low, expected]) => expected - low);
      row.up = spread(row, ([, expected, high]) => high - expected);
      row.known = () => ({ down: spread(row, (merit, c) => merit[1] - known(row, c)[0]), up: spread(row, (merit, c) => known(row, c)[1] - merit[1]) });
      row.without = criteria.reduce((all, c, k) => all + (c.name === "price" || c.name === "ownership" ? 0
        : row.merits[c.name][1] * spreadPoints[k]), 0);
    }
    const order = rows.filter((row) => !row.out.length).sort((a, b) => a.held_back - b.held_back ||
      b.score.expected - a.score.expected || (a.id < b.id ? -1 : 1));
    WeighOrder.place(order);
    const leader = order[0] || null;
    const flat = M.flatFrom(terms, market, order);
    for (const row of order.slice(1)) {
      row.break_even = M.breakEven(terms, market, row, flat, leader.score.expected, leader.held_back);
    }
    const excluded = rows.filter((row) => row.out.length);
    M.outAt(terms, market, excluded, leader, asked);
    return { market, criteria, shares, terms, order, excluded, leader, pick: leader && !leader.held_back ? leader : null,
      room: leader ? M.headroom(terms, market, order) : null };
  };

  return { rank };
})();

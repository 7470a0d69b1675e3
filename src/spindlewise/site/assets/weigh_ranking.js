"use strict";
// The ranking: shares, scores, order, levels, reasons and break-even prices, from the exported figures alone.
const WeighRanking = (() => {
  const N = WeighNumbers;

  // an exact sum does not depend on the order of its parts
  const sum = (values) => {
    const parts = [];
    for (let x of values) {
      let kept = 0;
      for (let y of parts) {
        if (Math.abs(x) < Math.abs(y)) [x, y] = [y, x];
        const high = x + y, low = y - (high - x);
        if (low) parts[kept++] = low;
        x = high;
      }
      parts.length = kept;
      parts.push(x);
    }
    return parts.reduceRight((total, part) => total + part, 0);
  };
  // to a billionth of a point, halves to even
  const settled = (points) => {
    const steps = points * 1e9, below = Math.floor(steps), rest = steps - below;
    return (rest > 0.5 || (rest === 0.5 && below % 2 !== 0) ? below + 1 : below) / 1e9;
  };
  const interpolated = (curve, value) => {
    const { x, merit } = curve, last = x.length - 1;
    if (value <= x[0]) return merit[0];
    if (value >= x[last]) return merit[last];
    let j = 0;
    while (x[j + 1] <= value) j += 1;
    return value === x[j] ? merit[j] : ((merit[j + 1] - merit[j]) / (x[j + 1] - x[j])) * (value - x[j]) + merit[j];
  };
  const meritAt = (curve, value) =>
    Math.min(Math.max(interpolated(curve, value), Math.min(...curve.merit)), Math.max(...curve.merit));
  const meritOver = (curve, low, high) => {
    const inside = curve.merit.filter((_, k) => low < curve.x[k] && curve.x[k] < high);
    const all = [meritAt(curve, low), meritAt(curve, high), ...inside];
    return [Math.min(...all), Math.max(...all)];
  };

  // ---- what arrives, and how far it may be trusted
  const ANY = { protocols: ["ANT+", "Bluetooth"], channels: "unlimited", pairs: "can", balance: "can", metrics: "can" };
  const reception = (data, product, receiver) => {
    const r = data.reception, able = (word) => r.able.indexOf(word);
    const heard = r.heard.findIndex((set) => set.length === receiver.protocols.length &&
      set.every((protocol) => receiver.protocols.includes(protocol)));
    const free = r.free.indexOf(typeof receiver.channels === "number" && receiver.channels > 1 ? "unlimited" : receiver.channels);
    const place = (((heard * r.free.length + free) * 3 + able(receiver.pairs)) * 3 + able(receiver.balance)) * 3 +
      able(receiver.metrics);
    return r.outcomes[r.rows[product.reception][place]];
  };
  const doubledSide = (data, product, left) => {
    if (!left) return data.doubled;
    const sign = product.sides === "right" ? -1 : 1;
    const errors = left.map((share) => sign * (100 * (2 * (share / 100) - 1)));
    const low = Math.min(...errors), high = Math.max(...errors);
    return { low, expected: (low + high) / 2, high, standard: (high - low) / 2 / Math.sqrt(3) };
  };
  const crankError = (asked) => {
    const ridden = asked.newCrank === null ? asked.crank : asked.newCrank;
    return ridden === null || asked.setCrank === null ? null : 100 * (asked.setCrank / ridden - 1);
  };
  const reading = (data, product, outcome, asked) => {
    const none = (origin, because) => ({ value: null, low: null, high: null, origin, because, largest: "" });
    if (product.kind === "plain pedal") return none("not applicable", "measures nothing");
    if (outcome.mode === "unknown") return none("unknown", "unknown: reading mode");
    if (outcome.mode === "nothing") return none("none", "nothing arrives");
    if (outcome.mode === "one side only") return none("none", "one side is not a total power");
    if (product.reading.missing.length) return none("unknown", "unknown: " + product.reading.missing.join(", "));
    const causes = [...product.reading.causes];
    let half = 0;
    if (outcome.mode === "one side doubled") {
      const error = doubledSide(data, product, asked.left);
      causes.push(["doubled side", error.standard, error.expected, null]);
      half = (error.high - error.low) / 2;
    }
    causes.push(...product.reading.temperature);
    // the crank length is taken as rightly set: a setting must not choose the pedals
    const bias = Math.abs(sum(causes.map((c) => c[2])));
    const k = data.coverage;
    const expanded = bias + k * Math.hypot(...causes.map((c) => c[1]));
    // [name, standard, bias, standard at its kindest where nobody has measured it]
    const others = causes.filter((c) => c[0] !== "doubled side");
    const fixed = k * Math.hypot(...others.map((c) => c[1]));
    const kindest = k * Math.hypot(...others.map((c) => (c[3] === null ? c[1] : c[3])));
    const reach = causes.map((c) => Math.abs(c[2]) + k * c[1]);
    const most = Math.max(...reach);
    return {
      value: expanded,
      low: Math.min(Math.max(bias - half, 0) + kindest, expanded),
      high: Math.max(bias + half + fixed, expanded),
      origin: causes[0][0] === "bench bias" ? "worked out" : "worked out from claims",
      not_measured: causes.filter((c) => c[3] !== null).map((c) => c[0]),
      because: causes.map((c) => c[0]).join(", "),
      largest: most > 0 ? causes[reach.indexOf(most)][0] : "",
    };
  };
  const curveMerits = (curve, figure) => {
    if (figure.value === null) {
      if (figure.origin === "unknown") return [curve.plausible_merits[0], ...curve.plausible_merits];
      const least = Math.min(...curve.merit);
      return [least, least, least];
    }
    const [low, high] = meritOver(curve, figure.low, figure.high), expected = meritAt(curve, figure.value);
    return [Math.min(low, expected), expected, Math.max(high, expected)];
  };

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
    return terms.reduce((earned, term) => earned + 100 * term.share * meritAt(term.curve, price + term.beside(row)), 0);
  };
  const flatFrom = (terms, market, rows) => {
    const ends = rows.length ? terms.map((t) => t.curve.x[t.curve.x.length - 1] - Math.min(...rows.map(t.beside))) : [];
    return Math.ceil(Math.max(0, ...ends) / market.per_minor_unit) + 1;
  };
  const breakEven = (terms, market, row, flat, target, targetHeld) => {
    if (row.held_back && !targetHeld) return { outcome: "at no price while it is held back" };
    const reaches = (units) => settled(row.without + pointsAt(terms, market, units, row)) >= settled(target);
    if (reaches(flat) || (targetHeld && !row.held_back)) return { outcome: "at any price" };
    if (!reaches(0)) return { outcome: "at no price, not even free" };
    let lowest = 0, highest = flat;
    while (highest - lowest > 1) {
      const middle = Math.floor((lowest + highest) / 2);
      if (reaches(middle)) lowest = middle; else highest = middle;
    }
    return { outcome: "at this price or less", minor_units: lowest };
  };

  // ---- needs: every one that fails is named
  const failures = (data, product, asked, outcome, paid, market) => {
    const out = [], unchecked = [], needs = product.needs;
    const fail = (need, because, safety = false) => out.push({ need, because, safety });
    if (paid.minor_units === undefined) fail("price", paid.because);
    else if (asked.budget !== null) {
      const cost = N.money(paid.minor_units, market.digits), over = N.subtract(cost, N.decimal(asked.budget));
      if (over.n > 0n) {
        fail("budget", "it costs " + N.moneyText(cost, market) + ", " + N.moneyText(over, market) + " over the budget");
      }
    }
    if (asked.kind !== "any" && product.kind !== asked.kind) fail("kind", "it is a " + product.kind);
    if (product.state === "not yet sold") fail("state", "it was not yet sold on " + data.as_of);
    else if (asked.states && !asked.states.includes(product.state)) fail("state", "it is " + (product.state === "clearance" ? "being sold off" : product.state));
    if (asked.mass !== null) {
      const limit = needs.rider_limit;
      if ("value" in limit) {
        if (limit.value < asked.mass) {
          fail("rider weight", "the maker's rider limit is " + N.general(limit.value) + " kg, below " +
            N.general(asked.mass) + " kg", true);
        }
      } else if (limit.absent !== "none") {
        fail("rider weight", "rider weight limit " + limit.absent + " (" + limit.because + ")", true);
      }
    }
    if (asked.shoes) {
      if (needs.bolts === "unknown") fail("cleats", "cleat drilling unknown", true);
      else if (needs.bolts !== asked.shoes) {
        fail("cleats", needs.bolts === "none" ? "it takes no cleat, and the shoes are " + asked.shoes
          : "its " + needs.bolts + " cleat does not fit " + asked.shoes + " shoes", true);
      } else if (asked.patterns && !asked.patterns.includes(needs.pattern)) {
        fail("cleats", "its cleat pattern is " + needs.pattern, true);
      }
    }
    const where = receiverName(asked);
    if (asked.both && outcome.mode !== "both sides") {
      if (outcome.mode === "unknown") unchecked.push("both sides on " + where + ": unknown");
      else fail("reading", where + " shows " + outcome.mode);
    }
    if (asked.balance && outcome.balance !== "arrives") {
      if (outcome.balance === "unknown") unchecked.push("balance on " + where + ": unknown");
      else fail("balance", "balance does not arrive at " + where);
    }
    if (asked.water) {
      const code = needs.ingress;
      if (!("code" in code)) {
        if (code.absent === "unknown") unchecked.push(asked.water + ": ingress code unknown");
        else fail("water", "ingress code: " + code.absent);
      } else {
        const answer = data.ingress.answers[code.code][data.ingress.needs.indexOf(asked.water)];
        if (answer === "u") unchecked.push(asked.water + ": " + code.code + " does not say");
        else if (answer === "n") fail("water", code.code + " does not satisfy " + asked.water);
      }
    }
    for (const [name, bound, found, unit, sense] of [
      ["weight", asked.grams, needs.weight, "g", -1],
      ["running time", asked.hours, needs.running_time, "h", 1],
      ["warranty", asked.warranty, needs.warranty, "years", 1],
    ]) {
      if (bound === null) continue;
      const word = sense < 0 ? "at most" : "at least";
      const measure = (value) => N.general(value) + " " + (unit === "years" && value === 1 ? "year" : unit);
      if ("value" in found) {
        if ((found.value - bound) * sense < 0) {
          fail(name, name + " " + measure(found.value) + " (" + found.grade + "), " + word + " " + measure(bound) + " asked");
        }
      } else if (found.absent === "unknown") unchecked.push(name + " " + word + " " + measure(bound) + ": unknown");
      else if (found.absent === "none") fail(name, name + ": none");
    }
    return { out, unchecked };
  };
  const receiverName = (asked) => (asked.receivers.length ? "your receiver" : "any receiver (none stated)");

  // ---- the whole
  const rank = (data, asked) => {
    const market = data.markets.find((m) => m.code === asked.region);
    if (market.missing) return { market, missing: market.missing };
    const criteria = data.criteria.filter((c) => asked.points[c.name] > 0);
    if (!criteria.length) return { market, missing: "all weights are 0; give at least one criterion more than 0" };
    const given = sum(criteria.map((c) => asked.points[c.name]));
    const shares = criteria.map((c) => asked.points[c.name] / given);
    const total = sum(shares);
    const points = shares.map((share) => (share / total) * 100);
    const receiver = asked.receivers[0] || ANY;
    const uncertainty = data.criteria.find((c) => c.name === "reading_uncertainty");
    const owning = data.criteria.find((c) => c.name === "ownership");
    const rows = data.products.map((product) => {
      const outcome = reception(data, product, receiver), paid = market.prices[product.id];
      const read = reading(data, product, outcome, asked), own = ownership(data, market, product, asked);
      const beside = N.number(own.beside) * market.factor;
      const merits = {};
      for (const { name } of criteria) {
        if (name === "price") merits[name] = paid.merits;
        else if (name === "detail") merits[name] = outcome.detail_merits;
        else if (name === "reading_uncertainty") merits[name] = curveMerits(uncertainty, read);
        else if (name === "ownership") merits[name] = owned(owning, market, paid, beside, own.unknown);
        else merits[name] = product.figures[name].merits;
      }
      const found = failures(data, product, asked, outcome, paid, market);
      return { id: product.id, product, paid, outcome, reading: read, own, beside, merits, held_back: product.notices.length > 0,
        out: found.out, unchecked: found.unchecked };
    });
    const weighted = (row, which) => criteria.reduce((all, c, k) => all + row.merits[c.name][which] * points[k], 0);
    const shareOfAll = shares.reduce((a, b) => a + b, 0), spreadPoints = shares.map((share) => (100 * share) / shareOfAll);
    const spread = (row, a, b) => Math.sqrt(criteria.reduce((all, c, k) => {
      const part = (row.merits[c.name][a] - row.merits[c.name][b]) * spreadPoints[k];
      return all + part * part;
    }, 0));
    const terms = criteria.flatMap((c, k) => c.name === "price" ? [{ curve: c, share: shares[k], beside: () => 0 }]
      : c.name === "ownership" ? [{ curve: c, share: shares[k], beside: (row) => row.beside }] : []);
    for (const row of rows) {
      row.score = { low: settled(weighted(row, 0)), expected: settled(weighted(row, 1)), high: settled(weighted(row, 2)) };
      row.down = spread(row, 1, 0);
      row.up = spread(row, 2, 1);
      row.without = criteria.reduce((all, c, k) => all + (c.name === "price" || c.name === "ownership" ? 0
        : row.merits[c.name][1] * spreadPoints[k]), 0);
    }
    const order = rows.filter((row) => !row.out.length).sort((a, b) => a.held_back - b.held_back ||
      b.score.expected - a.score.expected || (a.id < b.id ? -1 : 1));
    place(order);
    const leader = order[0] || null;
    const flat = flatFrom(terms, market, order);
    for (const row of order.slice(1)) {
      row.break_even = breakEven(terms, market, row, flat, leader.score.expected, leader.held_back);
    }
    const excluded = rows.filter((row) => row.out.length);
    outAt(terms, market, excluded, leader, asked);
    return { market, criteria, shares, order, excluded, leader, pick: leader && !leader.held_back ? leader : null,
      room: leader ? headroom(terms, market, order) : null };
  };
  const owned = (curve, market, paid, beside, unknown) => {
    if (paid.minor_units === undefined) return [curve.plausible_merits[0], ...curve.plausible_merits];
    const merit = (100 * meritAt(curve, paid.minor_units * market.per_minor_unit + beside)) / 100;
    return [unknown.length ? Math.min(merit, curve.plausible_merits[0]) : merit, merit, merit];
  };
  // whether one score is ahead by more than what is uncertain about the two; squares tell, but for what is settled
  const CLOSE = 1e-6;
  const isAhead = (first, second) => {
    const gap = first.score.expected - second.score.expected;
    const beyond = gap * gap - (first.down * first.down + second.up * second.up);
    if (Math.abs(beyond) > CLOSE) return gap > 0 && beyond > 0;
    return settled(gap) > settled(Math.hypot(first.down, second.up));
  };
  const clearly = (first, second) => (first.held_back === second.held_back ? isAhead(first, second) : !first.held_back);
  const levelWith = (order, row) => order.filter((other) => other !== row && !clearly(other, row) && !clearly(row, other));
  // in this order only what stands before can be clearly ahead
  const place = (order) => {
    const free = order.filter((row) => !row.held_back).length;
    for (const row of order) {
      row.rank = row.held_back ? 1 + free : 1;
      row.level = (row.held_back ? order.length - free : free) - 1;
    }
    for (let i = 0; i < order.length; i += 1) {
      const first = order[i], last = first.held_back ? order.length : free;
      for (let j = i + 1; j < last; j += 1) {
        if (!isAhead(first, order[j])) continue;
        order[j].rank += 1;
        order[j].level -= 1;
        first.level -= 1;
      }
    }
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

  // where it gains and loses points against another, largest first
  const differences = (found, row, rival) => {
    const total = sum(found.shares);
    const parts = found.criteria.map((c, k) => ({
      criterion: c.name, title: c.title,
      points: ((100 * found.shares[k]) / total) * (row.merits[c.name][1] - rival.merits[c.name][1]),
    }));
    parts.sort((a, b) => Math.abs(b.points) - Math.abs(a.points) || (a.criterion < b.criterion ? -1 : 1));
    return { parts, total: row.score.expected - rival.score.expected };
  };
  const differenceWords = ({ parts }) => {
    const said = [];
    for (const [verb, sign] of [["gains", 1], ["loses", -1]]) {
      const told = parts.filter((p) => p.points * sign > 0 && N.pointsText(Math.abs(p.points)) !== "0.0")
        .map((p, k) => N.pointsText(Math.abs(p.points)) + (k ? "" : " points") + " on " + N.within(p.title));
      if (told.length) said.push(verb + " " + N.listed(told));
    }
    return said.length ? said.join(", ") : "is alike on every count";
  };
  const behindWords = ({ total }) => {
    const points = N.pointsText(Math.abs(total));
    return points === "0.0" ? "the same score" : points + " points " + (total < 0 ? "below" : "above");
  };

  return { rank, reception, reading, differences, differenceWords, behindWords, receiverName, crankError, settled, sum, meritAt, meritOver, levelWith, ANY };
})();

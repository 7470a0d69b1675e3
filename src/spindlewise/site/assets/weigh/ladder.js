"use strict";
// The cost-per-gram ladder from the present pedals.
const WeighLadder = (() => {
  const N = WeighNumbers;

  // in exact decimals: rounding must not decide who stays
  const offer = (id, price, figure) => {
    const end = (given) => N.decimal(given === null ? figure.value : given);
    return { id, price, grams: N.decimal(figure.value), low: end(figure.low), high: end(figure.high) };
  };
  const byPrice = (a, b) => N.compare(a.price, b.price) || N.compare(a.grams, b.grams) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
  const saving = (from, to) => ({
    low: N.subtract(from.low, to.high), expected: N.subtract(from.grams, to.grams), high: N.subtract(from.high, to.low),
  });
  const positive = (a) => a.n > 0n;
  const dominators = (one, field) => field.filter((other) => other !== one && N.compare(other.price, one.price) <= 0 &&
    N.compare(other.grams, one.grams) <= 0 && byPrice(other, one) < 0).map((other) => other.id).sort();
  const steeper = (a, b, c) => {
    // money per gram from a to b against that from b to c, as cross products of positive grams
    const first = N.times(N.subtract(b.price, a.price), N.subtract(b.grams, c.grams));
    const second = N.times(N.subtract(c.price, b.price), N.subtract(a.grams, b.grams));
    return N.compare(first, second) > 0;
  };
  const climb = (undominated) => {
    const kept = [];
    for (const next of undominated) {
      while (kept.length > 1 && steeper(kept[kept.length - 2], kept[kept.length - 1], next)) kept.pop();
      kept.push(next);
    }
    return kept;
  };
  const ladder = (data, asked, found) => {
    const product = (id) => data.products.find((p) => p.id === id);
    const start = product(asked.present);
    if (!start) return { missing: "state your present pedals to see what each gram saved costs" };
    if (start.figures.weight.value === null) {
      return { missing: "the weight of " + start.name + " is " + start.figures.weight.origin + ": " + start.figures.weight.source };
    }
    const owned = offer(start.id, N.decimal(0), start.figures.weight);
    const others = found.order.filter((row) => row.id !== start.id);
    const rank = new Map(found.order.map((row) => [row.id, row]));
    const bare = (row) => row.held_back || row.product.figures.weight.value === null;
    const leftOut = others.filter(bare);
    const offers = others.filter((row) => !bare(row))
      .map((row) => offer(row.id, N.money(row.paid.minor_units, found.market.digits), row.product.figures.weight));
    const seen = new Map(offers.map((o) => [o, saving(owned, o)]));
    const told = offers.filter((o) => !(seen.get(o).low.n <= 0n && seen.get(o).high.n >= 0n));
    const field = [owned, ...told];
    const over = new Map(field.map((o) => [o, dominators(o, field)]));
    const foot = over.get(owned).length ? [] : [owned];
    const steps = climb([...foot, ...told.filter((o) => positive(seen.get(o).expected) && !over.get(o).length).sort(byPrice)]);
    const list = [...offers].sort((a, b) => !steps.includes(a) - !steps.includes(b) || byPrice(a, b)).map((o) => {
      const save = seen.get(o), place = steps.indexOf(o), lighter = positive(save.expected);
      const step = { id: o.id, row: rank.get(o.id), saving: save, extra: o.price, by: over.get(o) || [] };
      const grams = lighter ? save.expected : N.subtract(N.decimal(0), save.expected);
      if (!told.includes(o)) return { ...step, status: "no reliable saving" };
      if (lighter && positive(o.price)) step.each = [o.price, grams];
      if (step.by.length) return { ...step, status: "dominated" };
      if (place < 0) {
        const above = steps.findIndex((s) => N.compare(s.price, o.price) > 0);
        return { ...step, status: "extendedly dominated", by: [steps[above - 1].id, steps[above].id] };
      }
      if (place === 0) return { ...step, status: "lighter and not dearer" };
      const below = steps[place - 1];
      return { ...step, status: "rung", from: below.id,
        further: [N.subtract(o.price, below.price), N.subtract(below.grams, o.grams)] };
    });
    return { start, list, leftOut };
  };
  const perGram = (pair, market) => N.moneyText(N.divided(pair[0], pair[1], market.digits), market);

  return { ladder, perGram };
})();

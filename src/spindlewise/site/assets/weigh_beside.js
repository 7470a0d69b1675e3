"use strict";
// What stands beside a ranking: the cost-per-gram ladder from the present pedals, and the swap on the bike.
const WeighBeside = (() => {
  const N = WeighNumbers;

  // ---- the ladder, in exact decimals: rounding must not decide who stays
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
    const leftOut = others.filter((row) => row.product.figures.weight.value === null);
    const offers = others.filter((row) => row.product.figures.weight.value !== null)
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

  // ---- the swap: stack, cleat and sole less the crank, along the seat tube; positive is up
  const sameCleat = (a, b) => a.id === b.id || (a.swap.pattern === b.swap.pattern && a.swap.bolts === b.swap.bolts &&
    ["two-bolt", "three-bolt"].includes(a.swap.bolts) && a.swap.cleat === b.swap.cleat);
  const stack = (product, other) => {
    const bases = ["top", "sole"], shared = bases.filter((b) => product.swap[b] && other.swap[b]);
    const basis = [...shared, ...bases].find((b) => product.swap[b]);
    return basis ? { basis, value: product.swap[basis][0], spread: product.swap[basis][1] } : null;
  };
  const known = (value) => (typeof value === "number" ? value : null);
  const saddle = (old, next, asked) => {
    const sides = [old, next].map((p, k) => ({ product: p, stack: stack(p, k ? old : next), sign: k ? 1 : -1 }));
    const unlike = old.id !== next.id && sides[0].stack && sides[1].stack && sides[0].stack.basis !== sides[1].stack.basis;
    const cleatStays = sameCleat(old, next), terms = [], missing = [];
    const put = (figure, side, value, spread) => {
      if (value === null) missing.push("the " + figure + " of " + side.product.name);
      else terms.push({ figure, value: side.sign * value, spread });
    };
    for (const side of sides) {
      const own = side.product.swap, basis = side.stack ? side.stack.basis : "top";
      if (old.id !== next.id) put("stack", side, side.stack ? side.stack.value : null, side.stack ? side.stack.spread : 0);
      if (unlike ? basis === "top" : !cleatStays && !(old.id !== next.id && basis === "sole")) {
        const source = unlike && known(own.cleat) === null && cleatStays ? (side === sides[0] ? next.swap : old.swap) : own;
        put("cleat", side, known(source.cleat), source.cleat_plus_minus);
      }
    }
    if (asked.newSole !== null) {
      put("sole", sides[0], known(asked.sole), 0);
      put("sole", sides[1], known(asked.newSole), 0);
    }
    if (asked.newCrank !== null) {
      put("crank", { ...sides[0], sign: 1 }, known(asked.crank), 0);
      put("crank", { ...sides[1], sign: -1 }, asked.newCrank, 0);
    }
    if (missing.length) return { missing: [...new Set(missing)] };
    const part = (figure) => terms.filter((t) => t.figure === figure).reduce((all, t) => all + t.value, 0);
    const [up, cleat, sole, crank] = ["stack", "cleat", "sole", "crank"].map(part);
    const [ofStack, ofCleat] = unlike ? [up + cleat, 0] : [up, cleat];
    return {
      change: ofStack + ofCleat + sole + crank, plus_minus: Math.hypot(...terms.map((t) => t.spread)),
      stack: ofStack, cleat: ofCleat, sole, crank, unlike: Boolean(unlike),
    };
  };
  const swap = (data, asked, next) => {
    const old = data.products.find((p) => p.id === asked.present);
    if (!old) return null;
    const same = old.id === next.id, offsets = [old.swap.offset, next.swap.offset];
    const stance = same ? { change: 0, plus_minus: 0 } : offsets.every(Boolean)
      ? { change: 2 * (offsets[1][0] - offsets[0][0]), plus_minus: Math.hypot(offsets[0][1], offsets[0][1], offsets[1][1], offsets[1][1]) } : null;
    const [before, after] = [old.needs.weight, next.needs.weight];
    const weight = "value" in before && "value" in after
      ? { expected: after.value - before.value, low: after.low - before.high, high: after.high - before.low } : null;
    return { old, next, saddle: saddle(old, next, asked), stance, weight, cleats_change: !sameCleat(old, next) };
  };
  const moved = (change) => {
    const text = N.halfMillimetres(Math.abs(change));
    return text === "0.0 mm" ? "no change" : (change > 0 ? "up " : "down ") + text;
  };

  return { ladder, perGram, swap, saddle, moved };
})();

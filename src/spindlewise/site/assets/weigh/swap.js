"use strict";
// What a swap changes on the bike: saddle, stance, weight, cleats.
const WeighSwap = (() => {
  const N = WeighNumbers;

  // stack, cleat and sole less the crank, along the seat tube; positive is up
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
      basis: unlike ? "sole" : sides[1].stack ? sides[1].stack.basis : "top",
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

  return { swap, saddle, moved };
})();

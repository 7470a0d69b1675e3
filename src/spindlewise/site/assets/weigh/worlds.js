"use strict";
// How sure the first place is: worlds drawn in which weights and figures move within what is known of them.
const WeighWorlds = (() => {
  const DRAWS = 1000, AT_ONCE = 100, SEED = 20261;

  // a small generator of 32 bits (sfc32: Doty-Humphrey's public-domain design, tested in PractRand), from a seed
  const generator = (seed) => {
    let a = 0, b = 0, c = seed | 0, counter = 1;
    const next = () => {
      const sum = (a + b + counter) | 0;
      counter = (counter + 1) | 0;
      a = b ^ (b >>> 9);
      b = (c + (c << 3)) | 0;
      c = ((c << 21) | (c >>> 11)) + sum | 0;
      return sum >>> 0;
    };
    for (let k = 0; k < 16; k += 1) next();
    return () => (next() + 0.5) / 4294967296;
  };
  // by the polar method (Marsaglia and Bray 1964), two at a time
  const normals = (uniform) => {
    let kept = null;
    return () => {
      if (kept !== null) { const z = kept; kept = null; return z; }
      let x, y, square;
      do {
        x = 2 * uniform() - 1;
        y = 2 * uniform() - 1;
        square = x * x + y * y;
      } while (square >= 1 || square === 0);
      const stretch = Math.sqrt((-2 * Math.log(square)) / square);
      kept = y * stretch;
      return x * stretch;
    };
  };
  // by squeeze and rejection (Marsaglia and Tsang 2000); a shape below 1 comes from the next one
  const gamma = (shape, uniform, normal) => {
    if (shape < 1) return gamma(shape + 1, uniform, normal) * uniform() ** (1 / shape);
    const d = shape - 1 / 3, c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const z = normal(), v = (1 + c * z) ** 3;
      if (v > 0 && Math.log(uniform()) < 0.5 * z * z + d - d * v + d * Math.log(v)) return d * v;
    }
  };

  // how a merit spreads: an unknown one anywhere within its span, one within a plus-minus around what is expected
  const spreadOf = (row, name) => {
    const [low, , high] = row.merits[name];
    if (low === high || name === "price") return "held";
    // upkeep that nobody has priced can only add to the cost
    if (name === "ownership") return row.own.unknown.length ? "anywhere" : "held";
    if (name === "detail") return row.outcome.detail === null ? "anywhere" : "held";
    const figure = name === "reading_uncertainty" ? row.reading : row.product.figures[name];
    if (figure.origin === "unknown" || (figure.not_measured || []).length) return "anywhere";
    return figure.low === null ? "held" : "around";
  };
  const begin = ({ data, found }, draws = DRAWS, seed = SEED) => {
    const free = found.order.filter((row) => !row.held_back).sort((a, b) => (a.id < b.id ? -1 : 1));
    const uniform = generator(seed), normal = normals(uniform), names = found.criteria.map((c) => c.name);
    const shapes = found.shares.map((share) => data.worlds.concentration * share);
    const rows = free.map((row) => ({ expected: names.map((name) => row.merits[name][1]),
      moving: names.flatMap((name, k) => {
        const law = spreadOf(row, name), [low, expected, high] = row.merits[name];
        return law === "held" ? [] : [{ k, law, low, expected, high }];
      }) }));
    const times = new Array(free.length).fill(0), weights = new Array(names.length);
    let left = draws;
    const merit = ({ law, low, expected, high }) => {
      if (law === "anywhere") return low + uniform() * (high - low);
      const z = Math.max(-2, Math.min(2, normal()));
      return expected + (z > 0 ? (z * (high - expected)) / 2 : (z * (expected - low)) / 2);
    };
    const world = () => {
      let all = 0, best = -1, most = -Infinity;
      shapes.forEach((shape, k) => { weights[k] = gamma(shape, uniform, normal); all += weights[k]; });
      rows.forEach((row, i) => {
        let score = 0;
        for (let k = 0; k < weights.length; k += 1) score += weights[k] * row.expected[k];
        for (const cell of row.moving) score += weights[cell.k] * (merit(cell) - cell.expected);
        // to a billionth of a point; equal scores go to the first by id
        score = Math.round((score / all) * 1e11);
        if (score > most) { most = score; best = i; }
      });
      times[best] += 1;
    };
    // draws some more worlds and says whether any are left
    const step = (count = AT_ONCE) => {
      for (let k = 0; free.length && left > 0 && k < count; k += 1, left -= 1) world();
      return free.length > 0 && left > 0;
    };
    const chances = () => new Map(free.map((row, i) => [row.id, times[i] / draws]));
    return { step, chances, draws };
  };
  const standardError = (chance, draws) => Math.sqrt((chance * (1 - chance)) / draws);

  return { begin, standardError, generator, DRAWS };
})();

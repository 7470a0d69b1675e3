"use strict";
// Value curves and exact sums: from a figure to its merits, from merits to settled points.
const WeighCurves = (() => {
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
  const ends = new WeakMap();
  const endsOf = (curve) => {
    if (!ends.has(curve)) ends.set(curve, [Math.min(...curve.merit), Math.max(...curve.merit)]);
    return ends.get(curve);
  };
  const meritAt = (curve, value) => {
    const [least, most] = endsOf(curve);
    return Math.min(Math.max(interpolated(curve, value), least), most);
  };
  const meritOver = (curve, low, high) => {
    const inside = curve.merit.filter((_, k) => low < curve.x[k] && curve.x[k] < high);
    const all = [meritAt(curve, low), meritAt(curve, high), ...inside];
    return [Math.min(...all), Math.max(...all)];
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

  return { sum, settled, meritAt, meritOver, curveMerits };
})();

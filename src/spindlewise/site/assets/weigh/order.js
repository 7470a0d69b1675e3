"use strict";
// Who stands above whom, who is level, and where one gains and loses against another.
const WeighOrder = (() => {
  const N = WeighNumbers, C = WeighCurves;

  // whether one score is ahead by more than what is uncertain about the two; squares tell, but for what is settled
  const CLOSE = 1e-6;
  const isAhead = (first, second) => {
    const gap = first.score.expected - second.score.expected;
    const beyond = gap * gap - (first.down * first.down + second.up * second.up);
    if (Math.abs(beyond) > CLOSE) return gap > 0 && beyond > 0;
    return C.settled(gap) > C.settled(Math.hypot(first.down, second.up));
  };
  const clearly = (first, second) => (first.held_back === second.held_back ? isAhead(first, second) : !first.held_back);
  const levelWith = (order, row) => order.filter((other) => other !== row && !clearly(other, row) && !clearly(row, other));
  // of those, the ones that would not be level if what nobody knows stood as it is expected
  const byKnown = (row) => ({ ...row, ...row.known() });
  const apart = (one, other) => isAhead(byKnown(one), byKnown(other)) || isAhead(byKnown(other), byKnown(one));
  const onlyByUnknown = (order, row) => levelWith(order, row).filter((other) => apart(row, other));
  const levelSentences = (order, row, name) => {
    const unknown = onlyByUnknown(order, row), known = levelWith(order, row).filter((other) => !unknown.includes(other));
    const said = (other) => {
      const behind = row.score.expected - other.score.expected, points = N.pointsText(Math.abs(behind));
      return name(other) + (points === "0.0" ? "" : " (" + points + " points " + (behind > 0 ? "behind" : "ahead") + " by what is known)");
    };
    return [
      ...(known.length ? ["Level with it: " + N.listedMost(known.map(name)) + "; their scores differ by less than the figures leave " +
        "open. Between level products, take the one that you like better."] : []),
      ...(unknown.length ? ["Level only by what is not known, not by merit: " + N.listedMost(unknown.map(said)) + "."] : []),
    ];
  };
  // in this order only what stands before can be clearly ahead
  const place = (order) => {
    const free = order.filter((row) => !row.held_back).length;
    for (const row of order) {
      row.rank = row.held_back ? 1 + free : 1;
      row.level = (row.held_back ? order.length - free : free) - 1;
    }
    const score = order.map((row) => row.score.expected), up = order.map((row) => row.up * row.up);
    for (let i = 0; i < order.length; i += 1) {
      const first = order[i], last = first.held_back ? order.length : free, down = first.down * first.down;
      for (let j = i + 1; j < last; j += 1) {
        const gap = score[i] - score[j], beyond = gap * gap - (down + up[j]);
        if (beyond < -CLOSE || (beyond < CLOSE && !isAhead(first, order[j]))) continue;
        order[j].rank += 1;
        order[j].level -= 1;
        first.level -= 1;
      }
    }
  };

  // where it gains and loses points against another, largest first
  const differences = (found, row, rival) => {
    const total = C.sum(found.shares);
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

  return { isAhead, levelWith, apart, onlyByUnknown, levelSentences, place, differences, differenceWords, behindWords };
})();

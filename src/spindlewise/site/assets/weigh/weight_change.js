"use strict";
// The smallest change of weights after which another product scores as much as the first.
const WeighWeightChange = (() => {
  const LEVEL_MERIT = 5e-12, SAME_DISTANCE = 1e-12;
  const dot = (a, b) => a.reduce((all, x, k) => all + x * b[k], 0);
  const meanOf = (gain, moving) => {
    const some = gain.filter((_, k) => moving[k]);
    return some.reduce((all, x) => all + x, 0) / some.length;
  };

  // the shares nearest to `each` (0 or more, adding up to 1) with gain * shares >= 0, null where none will do: the
  // projection of each + t * gain on the simplex (Held, Wolfe and Crowder 1974) for the least t that will do
  const nearest = (each, gain) => {
    if (Math.max(...gain) < 0) return null;
    let at = [...each], lead = -dot(gain, at);
    const moving = each.map((share) => share > 0);
    while (lead > LEVEL_MERIT) {
      const middle = meanOf(gain, moving), pace = gain.map((g, k) => (moving[k] ? g - middle : 0)), closing = dot(pace, pace);
      let out = -1, soonest = Infinity;
      pace.forEach((p, k) => { if (p < 0 && at[k] / -p < soonest) { soonest = at[k] / -p; out = k; } });
      if (lead <= closing * soonest) {
        at = at.map((share, k) => share + (pace[k] * lead) / closing);
        break;
      }
      at = at.map((share, k) => Math.max(share + pace[k] * soonest, 0));
      at[out] = 0;
      moving[out] = false;
      lead = -dot(gain, at);
    }
    return at.map((share) => Math.max(share, 0));
  };
  const distance = (a, b) => Math.hypot(...a.map((x, k) => x - b[k]));
  // for one product against the first: its shares and how far they are, or null where no weights put it there
  const against = (found, row) => {
    const first = found.leader, all = found.shares.reduce((a, b) => a + b, 0), each = found.shares.map((share) => share / all);
    const gain = found.criteria.map((c) => row.merits[c.name][1] - first.merits[c.name][1]);
    if (row.held_back !== first.held_back || Math.max(...gain) < (row.id < first.id ? 0 : LEVEL_MERIT)) return null;
    const shares = nearest(each, gain);
    return shares && { row, shares, distance: distance(shares, each) };
  };
  // for every product but the first; and the smallest of all
  const changes = (found) => {
    const every = new Map(found.order.filter((row) => row !== found.leader).map((row) => [row.id, against(found, row)]));
    let smallest = null;
    for (const change of [...every.values()].filter(Boolean).sort((a, b) => (a.row.id < b.row.id ? -1 : 1))) {
      if (!smallest || change.distance < smallest.distance - SAME_DISTANCE) smallest = change;
    }
    return { every, smallest };
  };

  return { nearest, changes };
})();

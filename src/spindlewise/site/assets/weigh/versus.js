"use strict";
// Two products side by side for this question, whether or not they meet its needs.
const WeighVersus = (() => {
  const O = WeighOrder, M = WeighMoney;

  const rowsOf = (found) => [...(found.order || []), ...(found.excluded || [])];
  // what the reader chose, or the best of the ranking and the best of the others; null where there are no two
  const chosen = (asked, found) => {
    const rows = rowsOf(found), named = asked.pair.map((id) => rows.find((row) => row.id === id) || null);
    const first = named[0] || rows.find((row) => row !== named[1]), second = named[1] || rows.find((row) => row !== first);
    return first && second && first !== second ? [first, second] : null;
  };
  const compare = (data, asked, found, [first, second]) => {
    const flat = M.flatFrom(found.terms, found.market, [first, second]);
    const levelAt = [[first, second], [second, first]].map(([row, rival]) => (found.terms.length
      ? M.breakEven(found.terms, found.market, row, flat, rival.score.expected, rival.held_back) : null));
    const level = !O.isAhead(first, second) && !O.isAhead(second, first);
    return {
      first, second, levelAt, against: O.differences(found, first, second),
      level, unknown: level && O.apart(first, second),
      swap: WeighSwap.swap(data, { ...asked, present: first.id }, second.product),
    };
  };

  return { chosen, compare };
})();

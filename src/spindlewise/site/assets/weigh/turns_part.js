"use strict";
// What would make another first: its price, or other weights.
const WeighTurnsPart = (() => {
  const N = WeighNumbers, S = WeighSaid, { name, section, measured, opening, table } = WeighElements;
  const ID = "w-turns", TITLE = "What would make another first";

  const moves = (found, shares) => found.criteria
    .map((c, k) => ({ title: N.within(c.title), now: S.share(found.shares[k]), then: S.share(shares[k]) }))
    .filter((move) => move.now !== move.then);
  const weightWords = (found, change) => {
    if (!change) return "no weights at all";
    const told = moves(found, change.shares);
    return told.length ? told.map((move) => `${move.title} ${move.then} instead of ${move.now}`).join(", ") : "a change too small to print";
  };
  const smallestWords = (found, change) => {
    if (!change) return "No weights at all would put another product first.";
    const told = moves(found, change.shares);
    if (!told.length) return `A change of weights too small to print would bring ${name(change.row)} to the pick's score.`;
    return `The smallest change of weights that brings ${name(change.row)} to the pick's score: ` +
      N.listed(told.map((move) => `${move.title} ${move.then} instead of ${move.now}`)) + ".";
  };
  const draw = ({ found }) => {
    if (!found.pick || found.order.length < 2) return null;
    const { every, smallest } = WeighWeightChange.changes(found);
    const rows = found.order.filter((row) => row !== found.leader);
    return section(ID, TITLE, found.criteria.length > 1 ? measured(smallestWords(found, smallest)) : null,
      opening(ID + "-each", "For each pedal", () => table("What would make each pedal as good as the first",
        [["Pedal"], ["Costs", true], ["As good as the first at", true], ["Or with these weights"]],
        rows.map((row) => [name(row), S.price(row, found.market), S.firstAt(row, found.market),
          row.held_back ? "held back, whatever the weights" : weightWords(found, every.get(row.id))]))));
  };

  return { draw, smallestWords };
})();

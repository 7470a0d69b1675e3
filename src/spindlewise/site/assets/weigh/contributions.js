"use strict";
// Where each score comes from: points earned on each criterion, one after the other, a bar for each product.
const WeighContributions = (() => {
  const N = WeighNumbers, P = WeighPictures, { el, svg, hidden, name } = WeighElements;
  const ID = "w-points", TITLE = "Where each score comes from";
  const ROW = 50, BAR = 20, BOTTOM = 26, LETTER_PX = 15;

  const ordered = (found) => found.criteria
    .map((criterion, k) => ({ criterion, most: 100 * found.shares[k] }))
    .sort((a, b) => b.most - a.most || (a.criterion.name < b.criterion.name ? -1 : 1))
    .map((part, k) => ({ ...part, letter: String.fromCharCode(65 + k), solid: k % 2 === 0 }));
  const earned = (row, part) => part.most * row.merits[part.criterion.name][1];

  const bar = (row, parts, top, x) => {
    let points = 0;
    const marks = parts.map((part) => {
      const from = points, own = earned(row, part);
      points += own;
      const start = x(from), wide = x(points) - start;
      return P.told(`${name(row)}, ${part.criterion.title}: ${N.pointsText(own)} of ${N.pointsText(part.most)} points`,
        P.rect(start, top, wide, BAR, { class: part.solid ? "p-solid" : "p-pale" }),
        wide < LETTER_PX ? null : P.text(start + wide / 2, top + 15, part.letter,
          { class: part.solid ? "p-on-solid" : "p-on-pale", "text-anchor": "middle" }));
    });
    return [P.rect(x(0), top, x(100) - x(0), BAR, { class: "p-room" }), marks];
  };
  const swatch = (part) => svg("svg", { class: "w-swatch", viewBox: "0 0 20 20", width: 20, height: 20, ...hidden },
    P.rect(1, 1, 18, 18, { class: part.solid ? "p-solid" : "p-pale" }),
    P.text(10, 15, part.letter, { class: part.solid ? "p-on-solid" : "p-on-pale", "text-anchor": "middle" }));
  const draw = ({ found }) => {
    if (!found.order || !found.order.length) return null;
    const parts = ordered(found), rows = found.order.slice(0, P.MOST_ROWS), more = found.order.length - rows.length;
    const width = P.room(), height = rows.length * ROW + BOTTOM, x = P.scale(0, 100, 4, width - 14);
    const given = parts.map((part) => `${N.pointsText(part.most)} for ${N.within(part.criterion.title)}`).join(", ");
    const said = `Points that each pedal earns, criterion by criterion. You give ${given}. ` +
      `${name(rows[0])} comes to ${N.pointsText(rows[0].score.expected)}.`;
    const drawn = P.drawing(ID, TITLE, said, width, height, [
      P.acrossAxis(width < 480 ? [0, 50, 100] : [0, 20, 40, 60, 80, 100], x, 24, rows.length * ROW, String, true),
      rows.map((row, k) => [
        P.text(0, k * ROW + 16, row.product.name, { class: "p-row" }),
        P.text(width, k * ROW + 16, N.pointsText(row.score.expected), { class: "p-row", "text-anchor": "end" }),
        bar(row, parts, k * ROW + 23, x)]),
    ]);
    return P.part(ID + "-head", TITLE, P.figure(ID, drawn,
      "A frame is 100 points long. What a pedal earns fills it from the left, the weightiest criterion first, and comes to its score." +
        (more ? ` ${more} more ${more === 1 ? "stands" : "stand"} further down.` : ""),
      el("ul", { class: "w-key" }, parts.map((part) => el("li", {}, swatch(part), part.criterion.title + ", up to " + N.pointsText(part.most)))),
      () => ["Points by criterion, as expected",
        [["Pedal"], ...parts.map((part) => [part.criterion.title + ", of " + N.pointsText(part.most), true]), ["Score", true]],
        found.order.map((row) => [name(row) + (row.held_back ? ", held back" : ""), ...parts.map((part) => N.pointsText(earned(row, part))),
          N.pointsText(row.score.expected)])]));
  };

  return { draw };
})();

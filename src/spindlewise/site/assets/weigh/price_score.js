"use strict";
// Price against score: the stepped front, intervals, and numbers on the front.
const WeighPriceScore = (() => {
  const N = WeighNumbers, P = WeighPictures, { el, svg, name } = WeighElements;
  const ID = "w-picture", TITLE = "Price against score";
  const LEFT = 34, RIGHT = 24, TOP = 26, BOTTOM = 46;

  // those that no other beats on both; what is held back beats nobody
  const front = (points) => {
    let best = -Infinity;
    return [...points].filter((p) => !p.row.held_back).sort((a, b) => a.price - b.price || b.score - a.score)
      .filter((p) => p.score > best && ((best = p.score), true));
  };
  const priceOf = (row, market) => N.moneyText(N.money(row.paid.minor_units, market.digits), market);
  const pointsOf = (found) => found.order.map((row) => (
    { row, price: row.paid.minor_units / 10 ** found.market.digits, score: row.score.expected }));

  const mark = (p, place, x, y, market) => {
    const cx = x(p.price), cy = y(p.score), at = P.at;
    return P.told(`${name(p.row)}: ${priceOf(p.row, market)}, ${N.pointsText(p.score)} points`,
      svg("path", { class: "p-span", d: `M${at(cx)} ${at(y(p.row.score.high))}V${at(y(p.row.score.low))}` }),
      p.row.held_back ? svg("path", { class: "p-held", d: `M${at(cx - 5)} ${at(cy - 5)}l10 10m0-10l-10 10` })
        : svg("circle", { class: place < 0 ? "p-dot" : "p-dot p-ahead", cx: at(cx), cy: at(cy), r: place < 0 ? 5 : 6.5 }),
      place < 0 ? null : P.text(cx, cy - 12, String(place + 1), { class: "p-name", "text-anchor": "middle" }));
  };
  const stepped = (ahead, x, y, right) => {
    const [first, ...rest] = ahead;
    const steps = rest.map((p) => `H${P.at(x(p.price))}V${P.at(y(p.score))}`).join("");
    return svg("path", { class: "p-front", d: `M${P.at(x(first.price))} ${P.at(y(first.score))}${steps}H${right}` });
  };
  const draw = ({ found }) => {
    if (!found.order || found.order.length < 2) return null;
    const market = found.market, points = pointsOf(found), ahead = front(points);
    const width = P.room(), height = width < 480 ? 280 : 340, right = width - RIGHT, bottom = height - BOTTOM;
    const prices = points.map((p) => p.price), least = Math.min(...prices), most = Math.max(...prices);
    const pad = Math.max(most - least, most / 10) * 0.04;
    const across = P.ticksAcross(least - pad, most + pad, Math.min(width, 640));
    const x = P.scale(across.from, across.to, LEFT + 8, right - 8), y = P.scale(0, 100, bottom, TOP);
    const said = ahead.map((p, k) => `${k + 1}: ${name(p.row)}, ${priceOf(p.row, market)}, ${N.pointsText(p.score)} points`).join("; ");
    const drawn = P.drawing(ID, TITLE, "Pedals that no other beats on both price and score. " + (said || "None") + ".", width, height, [
      P.upAxis([0, 20, 40, 60, 80, 100], y, LEFT, right, String),
      P.acrossAxis(across.values, x, TOP, bottom, P.wholeText),
      svg("path", { class: "p-edge", d: `M${LEFT} ${bottom}H${right}` }),
      P.text(right, height - 6, "Price, " + market.currency, { class: "p-title", "text-anchor": "end" }),
      P.text(0, 13, "Score", { class: "p-title" }),
      ahead.length ? stepped(ahead, x, y, right) : [],
      points.map((p) => mark(p, ahead.indexOf(p), x, y, market)),
    ]);
    return P.part(ID + "-head", TITLE, P.figure(ID, drawn,
      "The stepped line joins the pedals that no other beats on both price and score; they are numbered. Bars tell how far a " +
        "score may go either way; a cross is held back by a safety notice.",
      el("ol", { class: "front" }, ahead.map((p) => el("li", {}, el("strong", {}, name(p.row)), ", " + priceOf(p.row, market) + ", " +
        N.pointsText(p.score)))),
      () => ["Price and score of each pedal",
        [["Pedal"], ["Price", true], ["Score", true], ["Between", true], ["On the line", true]],
        points.map((p) => [name(p.row) + (p.row.held_back ? ", held back" : ""), priceOf(p.row, market), N.pointsText(p.score),
          N.pointsText(p.row.score.low) + " and " + N.pointsText(p.row.score.high),
          ahead.includes(p) ? String(ahead.indexOf(p) + 1) : "no"])]));
  };

  return { draw, front };
})();

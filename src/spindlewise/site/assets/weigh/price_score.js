"use strict";
// Price against score, drawn anew: the stepped front, intervals, and names where there is room for them.
const WeighPriceScore = (() => {
  const N = WeighNumbers, { el, svg, section, name } = WeighElements;
  const WIDTH = 720, HEIGHT = 320, LEFT = 44, RIGHT = 24, TOP = 16, BOTTOM = 48;
  const niceStep = (span, most) => {
    const rough = span / most, power = 10 ** Math.floor(Math.log10(rough));
    return [1, 2, 5, 10].map((k) => k * power).find((step) => step >= rough);
  };
  const front = (points) => {
    let best = -Infinity;
    return [...points].filter((p) => !p.row.held_back).sort((a, b) => a.price - b.price || b.score - a.score)
      .filter((p) => p.score > best && ((best = p.score), true));
  };
  const draw = ({ found }) => {
    if (!found.order || found.order.length < 2) return null;
    const unit = 10 ** found.market.digits;
    const points = found.order.map((row) => ({ row, price: row.paid.minor_units / unit, score: row.score.expected }));
    const prices = points.map((p) => p.price), least = Math.min(...prices), most = Math.max(...prices);
    const step = niceStep(Math.max(most - least, most / 10, 1), 6);
    const from = Math.floor((least - step / 4) / step) * step, to = Math.ceil((most + step / 4) / step) * step;
    const x = (price) => LEFT + ((price - from) / (to - from)) * (WIDTH - LEFT - RIGHT);
    const y = (score) => TOP + (1 - score / 100) * (HEIGHT - TOP - BOTTOM);
    const at = (value) => N.numberText(value, 1);
    const parts = [];
    for (let score = 0; score <= 100; score += 20) {
      parts.push(svg("path", { class: "p-grid", d: `M${LEFT} ${at(y(score))}H${WIDTH - RIGHT}` }),
        svg("text", { class: "p-text", x: LEFT - 8, y: at(y(score) + 4), "text-anchor": "end" }, String(score)));
    }
    for (let price = from; price <= to + step / 2; price += step) {
      parts.push(svg("path", { class: "p-edge", d: `M${at(x(price))} ${HEIGHT - BOTTOM}v5` }),
        svg("text", { class: "p-text", x: at(x(price)), y: HEIGHT - BOTTOM + 20, "text-anchor": "middle" },
          N.moneyText(N.decimal(price), { currency: "", digits: 0 }).trim()));
    }
    parts.push(svg("path", { class: "p-edge", d: `M${LEFT} ${HEIGHT - BOTTOM}H${WIDTH - RIGHT}` }),
      svg("text", { class: "p-title", x: WIDTH - RIGHT, y: HEIGHT - 6, "text-anchor": "end" }, "Price, " + found.market.currency),
      svg("text", { class: "p-title", x: LEFT + 8, y: TOP + 4 }, "Score"));
    const ahead = front(points);
    if (ahead.length) {
      const [first, ...rest] = ahead;
      const steps = rest.map((p) => `H${at(x(p.price))}V${at(y(p.score))}`).join("");
      parts.push(svg("path", { class: "p-front", d: `M${at(x(first.price))} ${at(y(first.score))}${steps}H${WIDTH - RIGHT}` }));
    }
    for (const p of points) {
      const [cx, cy] = [x(p.price), y(p.score)], placed = ahead.indexOf(p);
      const said = `${name(p.row)}: ${N.moneyText(N.money(p.row.paid.minor_units, found.market.digits), found.market)}, ` +
        `${N.pointsText(p.score)} points`;
      parts.push(svg("g", { role: "img", "aria-label": said }, svg("title", {}, said),
        svg("path", { class: "p-span", d: `M${at(cx)} ${at(y(p.row.score.high))}V${at(y(p.row.score.low))}` }),
        p.row.held_back ? svg("path", { class: "p-held", d: `M${at(cx - 5)} ${at(cy - 5)}l10 10m0-10l-10 10` })
          : svg("circle", { class: placed < 0 ? "p-dot" : "p-dot p-ahead", cx: at(cx), cy: at(cy), r: placed < 0 ? 5 : 6.5 }),
        placed < 0 ? null : svg("text", { class: "p-name", x: at(cx), y: at(cy - 12), "text-anchor": "middle" }, String(placed + 1))));
    }
    return section("w-picture", "Price against score",
      el("p", { class: "measure" }, "The stepped line joins the pedals that no other beats on both price and score; they are " +
        "numbered. Bars tell how far a score may go either way; a cross is held back by a safety notice."),
      el("div", { class: "scroll w-scroll-picture", role: "region", "aria-label": "Price against score", tabindex: 0 },
        svg("svg", { class: "w-picture", viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: "group", "aria-label": "Price against score" }, parts)),
      el("ol", { class: "front" }, ahead.map((p) => el("li", {}, el("strong", {}, name(p.row)), ", " +
        N.moneyText(N.money(p.row.paid.minor_units, found.market.digits), found.market) + ", " + N.pointsText(p.score)))));
  };
  return { draw, front };
})();

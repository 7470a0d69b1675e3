"use strict";
// The ladder as a picture: grams saved against money, the steps that are worth their price joined.
const WeighLadderPicture = (() => {
  const N = WeighNumbers, P = WeighPictures, { svg, name } = WeighElements;
  const ID = "w-rungs", TITLE = "Grams saved against money";
  const RIGHT = 24, TOP = 28, BOTTOM = 46;

  const points = (made, steps) => made.list.map((step) => ({
    said: name(step.row), number: steps.indexOf(step) + 1, extra: N.number(step.extra),
    low: N.number(step.saving.low), grams: N.number(step.saving.expected), high: N.number(step.saving.high) }));
  const gramsSaid = (grams) => N.numberText(Math.abs(grams)) + " g " + (grams < 0 ? "heavier" : "lighter");
  const mark = (p, x, y, market) => {
    const cx = x(p.grams), cy = y(p.extra), at = P.at, placed = p.number > 0;
    return P.told(`${p.said}: ${gramsSaid(p.grams)}, ${N.moneyText(N.decimal(String(p.extra)), market)}`,
      svg("path", { class: "p-span", d: `M${at(x(p.low))} ${at(cy)}H${at(x(p.high))}` }),
      svg("circle", { class: placed ? "p-dot p-ahead" : "p-dot", cx: at(cx), cy: at(cy), r: placed ? 6.5 : 5 }),
      placed ? P.text(cx, cy - 12, String(p.number), { class: "p-name", "text-anchor": "middle" }) : null);
  };
  // none where nothing stands beside the present pedals
  const draw = (made, steps, market, below) => {
    if (!made.list.length) return null;
    const shown = points(made, steps), width = P.room(), height = width < 480 ? 280 : 340;
    const right = width - RIGHT, bottom = height - BOTTOM;
    const grams = [0, ...shown.flatMap((p) => [p.low, p.high])], money = [0, ...shown.map((p) => p.extra)];
    const across = P.ticksAcross(Math.min(...grams), Math.max(...grams), Math.min(width, 480));
    const up = P.ticks(0, Math.max(...money) * 1.06, 5);
    // room for the longest amount
    const left = 18 + 8 * Math.max(...up.values.map((value) => P.wholeText(value).length));
    const x = P.scale(across.from, across.to, left + 8, right - 8), y = P.scale(up.from, up.to, bottom, TOP);
    const start = { said: made.start.name, number: 0, extra: 0, low: 0, grams: 0, high: 0 };
    const onIt = steps.some((s) => s.status === "lighter and not dearer") ? [] : [start];
    const joined = [...onIt, ...shown.filter((p) => p.number).sort((a, b) => a.number - b.number)];
    const told = joined.filter((p) => p.number)
      .map((p) => `${p.number}: ${p.said}, ${gramsSaid(p.grams)} for ${N.moneyText(N.decimal(String(p.extra)), market)}`).join("; ");
    const said = `Beginning at the ${made.start.name}. ` + (told ? `Steps worth their price: ${told}.` : "No step is worth its price.");
    const drawn = P.drawing(ID, TITLE, said, width, height, [
      P.upAxis(up.values, y, left, right, P.wholeText),
      P.acrossAxis(across.values, x, TOP, bottom, P.wholeText),
      svg("path", { class: "p-edge", d: `M${left} ${bottom}H${right}` }),
      svg("path", { class: "p-zero", d: `M${P.at(x(0))} ${TOP}V${bottom}` }),
      P.text(right, height - 6, "Grams saved", { class: "p-title", "text-anchor": "end" }),
      P.text(0, 13, "Costs, " + market.currency, { class: "p-title" }),
      joined.length > 1 ? svg("path", { class: "p-front", d: "M" + joined.map((p) => `${P.at(x(p.grams))} ${P.at(y(p.extra))}`).join("L") }) : [],
      shown.map((p) => mark(p, x, y, market)),
      P.told(made.start.name + ", your own", P.rect(x(0) - 6, y(0) - 6, 12, 12, { class: "p-own" })),
    ]);
    return P.figure(ID, drawn, `The square is your ${made.start.name}, owned already. The line joins the steps that are worth their ` +
      "price, numbered; the flatter it runs, the cheaper the next gram. Bars are what the weighings leave open.", below, null);
  };

  return { draw };
})();

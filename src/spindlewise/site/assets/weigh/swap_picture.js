"use strict";
// The swap to scale: what stands between axis and foot before and after, and what the saddle does.
const WeighSwapPicture = (() => {
  const N = WeighNumbers, P = WeighPictures, W = WeighSwap, { svg } = WeighElements;
  const TITLE = "The swap, drawn to scale";
  const PX_PER_MM = 9, WIDTH = 300, HALF = 46, BEFORE = 52, AFTER = 164, SADDLE = 256, SAME_MM = 1e-6;
  const HEAD = 26, FOOT = 30, WRITTEN_PX = 34;
  const mm = (value) => N.numberText(value, 1) + " mm";
  const moved = (value) => N.halfMillimetres(value, true).replace("-", "−");
  const known = (value) => (typeof value === "number" ? value : null);

  // from the axis up: the pedal, its cleat, the sole; null where a height is missing
  const layers = (product, basis) => {
    const { top, sole, cleat } = product.swap, height = known(cleat);
    if (basis === "top") {
      if (!top) return null;
      return [{ what: "pedal", text: "pedal", height: top[0] }, ...(height ? [{ what: "cleat", text: "cleat", height }] : [])];
    }
    if (sole) return [{ what: "pedal", text: "pedal, cleat", height: sole[0] }];
    return top && height !== null ? [{ what: "pedal", text: "pedal, cleat", height: top[0] + height }] : null;
  };
  const total = (some) => some.reduce((all, layer) => all + layer.height, 0);
  // both sides, where the layers add up to the change that was worked out; what is not drawn stays and cancels
  const sides = (made, asked) => {
    if (made.saddle.missing) return null;
    let [before, after] = [made.old, made.next].map((product) => layers(product, made.saddle.basis));
    if (!before || !after) return null;
    if (known(asked.sole) !== null) {
      const next = known(asked.newSole);
      before = [...before, { what: "sole", text: "sole", height: asked.sole }];
      after = [...after, { what: "sole", text: "sole", height: next === null ? asked.sole : next }];
    }
    const lower = -made.saddle.crank;
    return Math.abs(total(after) - total(before) - lower - made.saddle.change) > SAME_MM ? null : { before, after, lower };
  };
  const side = (middle, start, some, y) => {
    let at = start;
    return some.map((layer) => {
      const foot = at, tall = layer.height * PX_PER_MM;
      at += layer.height;
      const label = { class: layer.what === "pedal" ? "p-on-solid" : "p-on-pale", "text-anchor": "middle" }, centre = y((foot + at) / 2);
      return P.told(`${layer.text} ${mm(layer.height)}`,
        P.rect(middle - HALF, y(at), 2 * HALF, tall, { class: { pedal: "p-solid", cleat: "p-pale", sole: "p-sole" }[layer.what] }),
        tall < WRITTEN_PX ? P.text(middle, centre + 5, mm(layer.height), label)
          : [P.text(middle, centre - 3, layer.text, label), P.text(middle, centre + 13, mm(layer.height), label)]);
    });
  };
  const arrow = (from, change, y) => {
    const a = y(from), b = y(from + change), up = change > 0, at = P.at;
    const text = [P.text(SADDLE, Math.max(a, b) + 20, moved(change), { class: "p-row", "text-anchor": "middle" })];
    if (Math.abs(change) < 0.05) return text;
    const tip = up ? 8 : -8;
    return [svg("path", { class: "p-arrow", d: `M${SADDLE} ${at(a)}V${at(b)}M${SADDLE - 6} ${at(b + tip)}L${SADDLE} ${at(b)}L${SADDLE + 6} ${at(b + tip)}` }), ...text];
  };
  const rows = ({ before, after, lower }, change) => {
    const height = (some, what) => { const found = some.find((layer) => layer.what === what); return found ? found.height : 0; };
    const signed = (value) => N.numberText(value, 1, true).replace("-", "−") + " mm";
    const told = ["pedal", "cleat", "sole"].flatMap((what) => {
      const found = [...before, ...after].find((layer) => layer.what === what), ends = [before, after].map((some) => height(some, what));
      return found ? [[N.sentence(found.text).slice(0, -1), ...ends.map(mm), signed(ends[1] - ends[0])]] : [];
    });
    if (lower) told.push(["Axis at the bottom of the stroke", "", "", signed(-lower)]);
    return [...told, ["Saddle, by common practice", "", "", moved(change)]];
  };
  const draw = (made, asked, id, which) => {
    const found = sides(made, asked);
    if (!found) return null;
    const { before, after, lower } = found, change = made.saddle.change, was = total(before);
    const least = Math.min(0, -lower), most = Math.max(was, total(after) - lower);
    const height = HEAD + FOOT + (most - least) * PX_PER_MM, y = (value) => HEAD + (most - value) * PX_PER_MM;
    const tall = (some) => some.map((layer) => `${layer.text} ${mm(layer.height)}`).join(", ");
    const way = lower > 0 ? "lower" : "higher";
    const said = `From axis to foot: ${tall(before)} before and ${tall(after)} after.` +
      (lower ? ` The crank’s end stands ${mm(Math.abs(lower))} ${way}.` : "") + ` The saddle moves by ${moved(change)}.`;
    const level = (value, from, to) => svg("path", { class: "p-level", d: `M${from} ${P.at(y(value))}H${to}` });
    const dot = (x, value) => svg("circle", { class: "p-axis", cx: x, cy: P.at(y(value)), r: 6 });
    const drawn = P.drawing(id, TITLE, said, WIDTH, height, [
      [[BEFORE, "Before"], [AFTER, "After"], [SADDLE, "Saddle"]].map(([x, text]) => P.text(x, 14, text, { class: "p-row", "text-anchor": "middle" })),
      level(0, 0, AFTER - HALF), level(was, BEFORE, WIDTH),
      side(BEFORE, 0, before, y), side(AFTER, -lower, after, y), dot(BEFORE, 0), dot(AFTER, -lower), arrow(was, change, y),
    ]);
    return P.figure(id, drawn, "Everything at one scale, at the bottom of the stroke; a dot is the pedal’s axis." +
      (lower ? ` The new crank holds its axis ${mm(Math.abs(lower))} ${way}.` : "") +
      " The foot stands on top, and the saddle goes where the foot went." +
      (known(asked.sole) === null ? " The sole stays and is not drawn." : ""), null,
    () => ["Heights between axis and foot, " + which, [["What"], ["Before", true], ["After", true], ["Change", true]], rows(found, change)]);
  };

  return { draw, sides };
})();

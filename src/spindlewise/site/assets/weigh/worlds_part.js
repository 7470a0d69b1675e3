"use strict";
// How sure the first place is, in the page: a sentence, a bar for each product, and how well the bars are known.
const WeighWorldsPart = (() => {
  const N = WeighNumbers, P = WeighPictures, W = WeighWorlds, { el, svg, name, section, measured } = WeighElements;
  const ID = "w-worlds", TITLE = "How sure that is";
  const ROW = 48, BAR = 14, BOTTOM = 42, LEAST_SHOWN = 0.005;

  const hundred = (chance) => N.numberText(100 * chance);
  // never rounds to none or all what is neither
  const ofHundred = (chance) => {
    if (chance === 1) return "all worlds drawn";
    if (chance > 0.995) return "more than 99 of 100 worlds";
    if (chance > 0 && chance < LEAST_SHOWN) return "less than 1 of 100 worlds";
    return hundred(chance) + " of 100 worlds";
  };
  const shortly = (chance) => (chance === 0 ? "never" : chance === 1 ? "always" : chance > 0.995 ? "over 99" : chance < LEAST_SHOWN
    ? "under 1" : hundred(chance));
  const byChance = (found, chances) => found.order.filter((row) => chances.has(row.id))
    .sort((a, b) => chances.get(b.id) - chances.get(a.id) || (a.id < b.id ? -1 : 1));
  const words = (found, chances, draws) => {
    const own = chances.get(found.pick.id), error = W.standardError(own, draws);
    const others = byChance(found, chances).filter((row) => row !== found.pick && chances.get(row.id) >= LEAST_SHOWN).slice(0, 3);
    return `${name(found.pick)} comes first in ${ofHundred(own)}` + (error ? ` (give or take ${N.numberText(200 * error, 1)})` : "") +
      (others.length ? "; " + N.listed(others.map((row) => `${name(row)} in ${hundred(chances.get(row.id))}`)) : "") + ".";
  };
  const bar = (row, chance, error, top, x) => P.told(`${name(row)}: first in ${ofHundred(chance)}`,
    P.rect(x(0), top, x(1) - x(0), BAR, { class: "p-room" }),
    P.rect(x(0), top, x(chance) - x(0), BAR, { class: "p-solid" }),
    error ? svg("path", { class: "p-doubt", d: `M${P.at(x(Math.max(0, chance - 2 * error)))} ${top + BAR + 4}H${P.at(x(Math.min(1, chance + 2 * error)))}` }) : null);
  const draw = ({ found }, worlds) => {
    if (!found.pick) return null;
    const chances = worlds.chances(), draws = worlds.draws, every = byChance(found, chances);
    const rows = every.filter((row) => chances.get(row.id) > 0).slice(0, P.MOST_ROWS), never = every.length - rows.length;
    const width = P.room(), height = rows.length * ROW + BOTTOM, x = P.scale(0, 1, 4, width - 14);
    const drawn = P.drawing(ID, "How often each pedal comes first", words(found, chances, draws), width, height, [
      P.acrossAxis([0, 0.25, 0.5, 0.75, 1], x, 20, rows.length * ROW, (v) => N.numberText(100 * v), true),
      P.text(width, height - 4, "First in so many of 100 worlds", { class: "p-title", "text-anchor": "end" }),
      rows.map((row, k) => {
        const chance = chances.get(row.id);
        return [P.text(0, k * ROW + 13, row.product.name, { class: "p-row" }),
          P.text(width, k * ROW + 13, shortly(chance), { class: "p-row", "text-anchor": "end" }),
          bar(row, chance, W.standardError(chance, draws), k * ROW + 19, x)];
      }),
    ]);
    const error = W.standardError(chances.get(found.pick.id), draws);
    const caption = `${P.wholeText(draws)} worlds were drawn, with weights around yours (as of somebody who is fairly sure of them), ` +
      "figures within their plus-minus, and unknown figures anywhere that is plausible. The thin line below a bar is its give or take, " +
      `two standard errors either way; one is ${N.numberText(100 * error, 1)} worlds of 100 for the first.` +
      (never > 1 ? ` ${never} more come first less often, or never.` : never ? " One more comes first less often, or never." : "");
    return section(ID + "-head", TITLE, el("p", { class: "measure w-sure" }, words(found, chances, draws)), P.figure(ID, drawn, caption, null,
      () => ["How often each pedal comes first", [["Pedal"], ["First, of 100 worlds", true], ["Standard error", true]],
        every.map((row) => [name(row), shortly(chances.get(row.id)), N.numberText(100 * W.standardError(chances.get(row.id), draws), 1)])]));
  };

  return { draw, words };
})();

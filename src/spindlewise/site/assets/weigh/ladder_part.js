"use strict";
// The ladder in the page: what each gram saved costs, and what is not worth its price.
const WeighLadderPart = (() => {
  const N = WeighNumbers, L = WeighLadder, { el, name, section, measured, bullets, table, opening } = WeighElements;
  const TITLE = "What each gram saved costs";

  const grams = (d) => N.plain(N.inSteps(d, 0));
  const against = (step, market) => {
    const cost = step.extra.n === 0n ? "costs the same" : "costs " + N.moneyText(step.extra, market);
    if (step.status === "no reliable saving") return cost + "; the weighings cannot tell which of the two is lighter";
    const lighter = step.saving.expected.n > 0n;
    return grams(lighter ? step.saving.expected : N.subtract(N.decimal(0), step.saving.expected)) + " g " +
      (lighter ? "lighter" : "heavier") + ", " + cost + (step.each ? ", " + L.perGram(step.each, market) + " a gram" : "");
  };
  const draw = ({ data, asked, found }) => {
    if (!found.order) return null;
    const made = L.ladder(data, asked, found), market = found.market;
    if (made.missing) return section("w-ladder", TITLE, measured("Cannot be said yet: " + made.missing + "."));
    const label = (id) => data.products.find((p) => p.id === id).name;
    const steps = made.list.filter((s) => s.status === "rung" || s.status === "lighter and not dearer");
    const off = (s) => {
      if (s.status === "dominated") {
        const who = s.by.includes(made.start.id) ? made.start.name : N.listed(s.by.slice(0, 3).map(label), "or");
        return against(s, market) + "; no lighter and no cheaper than " + who;
      }
      if (s.status === "extendedly dominated") return against(s, market) + "; a gram is cheaper between " + N.listed(s.by.map(label));
      return against(s, market);
    };
    const others = made.list.filter((s) => !steps.includes(s));
    return section("w-ladder", TITLE,
      measured("Against your " + made.start.name + ", " + made.start.figures.weight.text +
        ": already owned, so its price counts as nothing."),
      WeighLadderPicture.draw(made, steps, market, null),
      steps.length ? table("Steps worth their price, cheapest first",
        [["Pedal"], ["Saves", true], ["Range", true], ["Costs", true], ["A gram", true], ["Each further gram", true]],
        steps.map((s) => [name(s.row), grams(s.saving.expected) + " g", grams(s.saving.low) + " to " + grams(s.saving.high) + " g",
          N.moneyText(s.extra, market), s.each ? L.perGram(s.each, market) : "not dearer", s.further ? L.perGram(s.further, market) : ""]))
        : measured("Nothing that could be bought here is reliably lighter."),
      others.length || made.leftOut.length ? opening("w-off-ladder", "Not on the ladder",
        () => bullets([...others.map((s) => name(s.row) + ": " + off(s) + "."),
          ...made.leftOut.map((row) => name(row) + ": " + (row.held_back ? "a safety notice holds it back"
            : "weight " + row.product.figures.weight.origin) + ".")])) : null);
  };

  return { draw };
})();

"use strict";
// The question and its answer in words: as a buyer for the command line, and ready to paste.
const WeighSaid = (() => {
  const N = WeighNumbers, O = WeighOrder;

  // as the YAML of a buyer
  const yaml = (data, asked, withPrivate = false) => {
    const q = withPrivate ? asked : WeighQuestion.withoutPrivate(asked), quoted = JSON.stringify;
    const market = data.markets.find((m) => m.code === q.region);
    // a file keeps fifteen digits of a number
    const number = (value) => N.short(Number(Number(value).toPrecision(15)));
    const lines = [
      "# Save as you.yaml, then: spindlewise answer --buyer you.yaml",
      "schema: spindlewise buyer 1", "id: you", "name: you", "question: Which power pedals suit me?",
      "region: " + quoted(q.region), "currency: " + quoted(market.currency),
    ];
    if (q.budget !== null) lines.push("budget: " + q.budget);
    lines.push("weights:", "  points:");
    for (const c of data.criteria) if (q.points[c.name] > 0) lines.push("    " + c.name + ": " + number(q.points[c.name]));
    const block = (name, entries) => {
      const stated = entries.filter(([, value]) => value !== null && value !== undefined);
      if (stated.length) lines.push(name + ":", ...stated.map(([key, value]) => "  " + key + ": " + value));
    };
    const stated = (value) => (value === null ? null : typeof value === "number" ? number(value) : value);
    block("needs", [
      ["rider_mass_kg", stated(q.mass)],
      ["shoes", q.shoes && "{bolts: " + q.shoes + (q.patterns ? ", patterns: [" + q.patterns.map((p) => quoted(p)).join(", ") + "]" : "") + "}"],
      ["reading", q.both ? "both sides" : null],
      ["balance", q.balance ? "needed" : null],
      ["water", q.water],
      ["weight_g_at_most", stated(q.grams)],
      ["running_hours_at_least", stated(q.hours)],
      ["warranty_years_at_least", stated(q.warranty)],
      ["states", q.states && "[" + q.states.join(", ") + "]"],
      ["kind", q.kind === "power pedal" ? null : q.kind],
    ]);
    if (q.receivers.length) lines.push("receivers:");
    q.receivers.forEach((r, k) => lines.push(
      "  - name: " + ["your receiver", "your second receiver", "your third receiver"][k],
      "    protocols: [" + r.protocols.join(", ") + "]",
      "    channels: " + (typeof r.channels === "number" ? "{total: " + r.channels + "}" : r.channels),
      "    pairs_two_sensors: " + r.pairs, "    shows_balance: " + r.balance, "    shows_stroke_metrics: " + r.metrics,
    ));
    if (q.present !== "none") lines.push("present_pedals: " + quoted(q.present));
    block("bike", [["crank_mm", stated(q.crank)], ["new_crank_mm", stated(q.newCrank)], ["head_unit_crank_mm", stated(q.setCrank)]]);
    block("shoes", [["sole_mm", stated(q.sole)], ["new_sole_mm", stated(q.newSole)]]);
    block("riding", [
      ["hours_per_year", stated(q.ride)], ["years", stated(q.keep)],
      ["balance_left_pct", q.left && "{low: " + number(q.left[0]) + ", high: " + number(q.left[1]) + "}"],
    ]);
    return lines.join("\n") + "\n";
  };

  // as an answer in words
  const firstAt = (row, market) => ({
    "at this price or less": () => N.moneyText(N.money(row.break_even.minor_units, market.digits), market),
    "at any price": () => "any price", "at no price while it is held back": () => "held back",
    "at no price, not even free": () => "no price",
  })[row.break_even.outcome]();
  const price = (row, market) => N.moneyText(N.money(row.paid.minor_units, market.digits), market);
  const share = (value) => N.numberText(value * 100, 1) + " %";
  const frame = (data, asked, market) => "As of " + data.as_of + ". Region " + asked.region + ", currency " + market.currency +
    ", budget " + (asked.budget === null ? "no limit" : N.moneyText(N.decimal(asked.budget), market)) + ". Receiver: " +
    (asked.receivers.length ? WeighReading.receiverName(asked) : "none stated, so the best case counts") + ".";
  const words = (data, asked, found, link) => {
    const lines = [];
    if (found.missing) return "No ranking: " + found.missing + ".\n";
    const { market, pick } = found;
    if (data.invented) lines.push(data.invented, "");
    if (!pick) {
      lines.push(found.order.length ? "No pick: everything that no need keeps out is held back by a safety notice."
        : "No pick: nothing in the catalog meets all the needs.");
    } else {
      lines.push("Our pick: " + pick.product.name + ".", "Price: " + pick.paid.said + ".",
        "Score: " + scoreWords(pick) + ".");
      lines.push(...O.levelSentences(found.order, pick, (row) => row.product.name));
    }
    lines.push(frame(data, asked, market),
      "What counts: " + N.listed(found.criteria.map((c, k) => N.within(c.title) + " " + share(found.shares[k]))) + ".", "");
    for (const row of found.order) {
      lines.push((row.held_back ? "-" : row.rank + (row.level ? "=" : "")) + " " + row.product.name + ": " +
        N.pointsText(row.score.expected) + ", " + price(row, market) +
        (row === found.leader ? "" : "; as good as the first at " + firstAt(row, market) +
          "; " + O.differenceWords(O.differences(found, row, found.leader)) + " against it"));
    }
    const told = [...found.order.filter((row) => row.product.notices.length)].flatMap((row) => row.product.notices);
    if (told.length) lines.push("", "Safety notices:", ...told.map((t) => "! " + t));
    if (pick) lines.push("", "Disclosure: " + pick.product.disclosure);
    lines.push("", "Before you ride:", ...data.cautions.map((c) => "- " + c));
    if (link) lines.push("", "Weigh it yourself: " + link);
    return lines.join("\n") + "\n";
  };
  const scoreWords = (row) => {
    const [low, expected, high] = [row.score.low, row.score.expected, row.score.high].map((v) => N.pointsText(v));
    return low === high ? expected + " of 100"
      : expected + " of 100, between " + low + " and " + high + " as far as the figures are sure";
  };

  return { yaml, words, firstAt, price, share };
})();

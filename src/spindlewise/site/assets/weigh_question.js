"use strict";
// The question as state: from a link and back, as a buyer for the command line, as an answer in words.
const WeighQuestion = (() => {
  const N = WeighNumbers;
  const LONGEST = 2000;
  const MOST_RECEIVERS = 3;
  const STATES = ["current", "superseded", "clearance", "discontinued"];
  const PRIVATE = ["mass", "left"];

  const blank = (data) => ({
    region: data.markets[0].code, budget: null, points: { ...data.usual.points }, receivers: [], present: "none",
    kind: "power pedal", states: null, shoes: null, patterns: null, both: false, balance: false, water: null,
    grams: null, hours: null, warranty: null, crank: null, newCrank: null, setCrank: null, sole: null, newSole: null,
    ride: null, keep: null, mass: null, left: null,
  });

  // ---- reading a link: only what is on the list, only within its bounds, never more than so much
  class Refused extends Error {}
  const refuse = () => { throw new Refused("not understood"); };
  const oneOf = (...allowed) => (text) => (allowed.includes(text) ? text : refuse());
  const amount = (least, most, open = false) => (text) => {
    if (!/^\d{1,10}(\.\d{1,17})?$/.test(text)) refuse();
    const value = Number(text);
    return (open ? value > least : value >= least) && value <= most ? value : refuse();
  };
  const setOf = (allowed) => (text) => {
    const words = text.split(",");
    if (new Set(words).size !== words.length || !words.every((w) => allowed.includes(w))) refuse();
    return words;
  };
  const readers = (data) => {
    const patterns = data.products.map((p) => p.swap.pattern);
    const criteria = data.criteria.map((c) => c.name);
    return {
      region: ["region", oneOf(...data.markets.map((m) => m.code))],
      budget: ["budget", (text) => { amount(0, 1e9)(text); return N.short(text); }],
      points: ["points", (text) => {
        const points = {};
        for (const part of text.split(",")) {
          const [name, value, more] = part.split(":");
          if (!criteria.includes(name) || name in points || more !== undefined) refuse();
          points[name] = amount(0, 1000)(value || "");
        }
        if (points.price > 0 && points.ownership > 0) refuse();
        return points;
      }],
      receiver: ["receivers", (text) => {
        const [protocols, channels, pairs, balance, metrics, more] = text.split(",");
        const heard = { ant: ["ANT+"], bluetooth: ["Bluetooth"], "ant-bluetooth": ["ANT+", "Bluetooth"] }[protocols];
        const able = oneOf("can", "cannot", "unknown");
        if (!heard || more !== undefined) refuse();
        const free = /^\d{1,2}$/.test(channels) ? amount(0, 64)(channels) : oneOf("unlimited", "unknown")(channels);
        return { protocols: heard, channels: free, pairs: able(pairs), balance: able(balance), metrics: able(metrics) };
      }],
      present: ["present", oneOf("unknown", ...data.products.map((p) => p.id))],
      kind: ["kind", (text) => (oneOf("plain", "any")(text) === "any" ? "any" : "plain pedal")],
      states: ["states", setOf(STATES)],
      shoes: ["shoes", oneOf("two-bolt", "three-bolt")],
      pattern: ["patterns", oneOf(...patterns)],
      reading: ["both", (text) => oneOf("both")(text) === "both"],
      balance: ["balance", (text) => oneOf("needed")(text) === "needed"],
      water: ["water", oneOf(...data.ingress.needs)],
      grams: ["grams", amount(0, 2000, true)],
      hours: ["hours", amount(0, 10000, true)],
      warranty: ["warranty", amount(0, 50, true)],
      crank: ["crank", amount(100, 220)],
      "new-crank": ["newCrank", amount(100, 220)],
      "set-crank": ["setCrank", amount(100, 220)],
      sole: ["sole", (text) => (text === "unknown" ? text : amount(0, 2000)(text))],
      "new-sole": ["newSole", (text) => (text === "unknown" ? text : amount(0, 2000)(text))],
      ride: ["ride", amount(0, 8760, true)],
      keep: ["keep", amount(0, 40, true)],
      mass: ["mass", amount(0, 400, true)],
      left: ["left", (text) => {
        const ends = text.split("-").map(amount(20, 80));
        return ends.length === 2 && ends[0] <= ends[1] ? ends : refuse();
      }],
    };
  };
  const REPEATED = { receiver: MOST_RECEIVERS, pattern: 20 };
  // what is no valid part is left out and counted; `whole` says that nothing of the link could be used
  const read = (data, fragment) => {
    const asked = blank(data), text = fragment.replace(/^#/, "");
    if (!text) return { asked, ignored: 0, whole: false, newer: false, empty: true };
    const parts = text.length > LONGEST ? [] : text.split("&");
    const newer = /^v=([2-9]|[1-9]\d{1,3})$/.test(parts[0]);
    if (parts[0] !== "v=1") return { asked, ignored: 1, whole: true, newer, empty: false };
    const known = readers(data), seen = {};
    let ignored = 0;
    for (const part of parts.slice(1)) {
      const cut = part.indexOf("="), key = part.slice(0, Math.max(cut, 0));
      try {
        if (!Object.prototype.hasOwnProperty.call(known, key)) refuse();
        seen[key] = (seen[key] || 0) + 1;
        if (seen[key] > (REPEATED[key] || 1)) refuse();
        const [field, reader] = known[key];
        const value = reader(decodeURIComponent(part.slice(cut + 1)));
        if (key in REPEATED) asked[field] = [...(asked[field] || []), value];
        else asked[field] = value;
      } catch (error) {
        if (!(error instanceof Refused) && !(error instanceof URIError)) throw error;
        ignored += 1;
      }
    }
    return { asked, ignored, whole: false, newer: false, empty: false };
  };

  const HEARD = { "ANT+": "ant", Bluetooth: "bluetooth" };
  const write = (data, asked, withPrivate = false) => {
    const parts = ["v=1", "region=" + asked.region];
    const put = (key, value) => {
      if (value !== null && value !== false) parts.push(key + "=" + value);
    };
    const number = (value) => (typeof value === "number" ? N.short(value) : value);
    const words = (value) => value && encodeURIComponent(value);
    put("budget", asked.budget);
    put("points", data.criteria.filter((c) => asked.points[c.name] > 0)
      .map((c) => c.name + ":" + N.short(asked.points[c.name])).join(",") || "price:0");
    for (const r of asked.receivers) {
      put("receiver", [["ANT+", "Bluetooth"].filter((p) => r.protocols.includes(p)).map((p) => HEARD[p]).join("-"),
        r.channels, r.pairs, r.balance, r.metrics].join(","));
    }
    put("present", asked.present === "none" ? null : asked.present);
    put("kind", asked.kind === "power pedal" ? null : asked.kind.replace(" pedal", ""));
    put("states", asked.states && asked.states.join(","));
    put("shoes", asked.shoes);
    for (const pattern of asked.patterns || []) put("pattern", words(pattern));
    put("reading", asked.both && "both");
    put("balance", asked.balance && "needed");
    put("water", asked.water);
    for (const [key, field] of [["grams", "grams"], ["hours", "hours"], ["warranty", "warranty"], ["crank", "crank"],
      ["new-crank", "newCrank"], ["set-crank", "setCrank"], ["sole", "sole"], ["new-sole", "newSole"], ["ride", "ride"],
      ["keep", "keep"]]) put(key, number(asked[field]));
    if (withPrivate) {
      put("mass", number(asked.mass));
      put("left", asked.left && asked.left.map(number).join("-"));
    }
    return "#" + parts.join("&");
  };
  const withoutPrivate = (asked) => ({ ...asked, ...Object.fromEntries(PRIVATE.map((key) => [key, null])) });
  const hasPrivate = (asked) => PRIVATE.some((key) => asked[key] !== null);

  // ---- as the YAML of a buyer
  const yaml = (data, asked, withPrivate = false) => {
    const q = withPrivate ? asked : withoutPrivate(asked), quoted = JSON.stringify;
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

  // ---- as an answer in words
  const firstAt = (row, market) => ({
    "at this price or less": () => N.moneyText(N.money(row.break_even.minor_units, market.digits), market),
    "at any price": () => "any price", "at no price while it is held back": () => "held back",
    "at no price, not even free": () => "no price",
  })[row.break_even.outcome]();
  const price = (row, market) => N.moneyText(N.money(row.paid.minor_units, market.digits), market);
  const share = (value) => N.numberText(value * 100, 1) + " %";
  const frame = (data, asked, market) => "As of " + data.as_of + ". Region " + asked.region + ", currency " + market.currency +
    ", budget " + (asked.budget === null ? "no limit" : N.moneyText(N.decimal(asked.budget), market)) + ". Receiver: " +
    (asked.receivers.length ? WeighRanking.receiverName(asked) : "none stated, so the best case counts") + ".";
  const words = (data, asked, found, link) => {
    const R = WeighRanking, lines = [];
    if (found.missing) return "No ranking: " + found.missing + ".\n";
    const { market, pick } = found;
    if (data.invented) lines.push(data.invented, "");
    if (!pick) {
      lines.push(found.order.length ? "No pick: everything that meets the needs is held back by a safety notice."
        : "No pick: nothing in the catalog meets all the needs.");
    } else {
      lines.push("Our pick: " + pick.product.name + ".", "Price: " + pick.paid.said + ".",
        "Score: " + scoreWords(pick) + ".");
      if (pick.level) {
        lines.push("Level with it: " + N.listed(WeighRanking.levelWith(found.order, pick).map((row) => row.product.name)) +
          "; the difference lies within what the figures are sure of.");
      }
    }
    lines.push(frame(data, asked, market),
      "What counts: " + N.listed(found.criteria.map((c, k) => N.within(c.title) + " " + share(found.shares[k]))) + ".", "");
    for (const row of found.order) {
      lines.push((row.held_back ? "-" : row.rank + (row.level ? "=" : "")) + " " + row.product.name + ": " +
        N.pointsText(row.score.expected) + ", " + price(row, market) +
        (row === found.leader ? "" : "; level with the first at " + firstAt(row, market) +
          "; " + R.differenceWords(R.differences(found, row, found.leader)) + " against it"));
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

  return { blank, read, write, yaml, words, firstAt, price, share, frame, scoreWords, hasPrivate, withoutPrivate,
    LONGEST, MOST_RECEIVERS, STATES };
})();

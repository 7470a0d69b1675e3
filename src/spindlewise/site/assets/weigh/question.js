"use strict";
// The question as state: from a link and back.
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
    ride: null, keep: null, pair: ["", ""], mass: null, left: null,
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
    const criteria = data.criteria.map((c) => c.name), products = data.products.map((p) => p.id);
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
      // two products side by side; an empty place is filled from the ranking
      pair: ["pair", (text) => {
        const ids = text.split(",");
        if (ids.length !== 2 || ids[0] === ids[1] || !ids.every((id) => id === "" || products.includes(id))) refuse();
        return ids;
      }],
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
    if (asked.pair[0] !== asked.pair[1]) put("pair", asked.pair.join(","));
    if (withPrivate) {
      put("mass", number(asked.mass));
      put("left", asked.left && asked.left.map(number).join("-"));
    }
    return "#" + parts.join("&");
  };
  const withoutPrivate = (asked) => ({ ...asked, ...Object.fromEntries(PRIVATE.map((key) => [key, null])) });
  const hasPrivate = (asked) => PRIVATE.some((key) => asked[key] !== null);

  return { blank, read, write, hasPrivate, withoutPrivate, LONGEST, MOST_RECEIVERS, STATES };
})();

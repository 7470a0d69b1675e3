"use strict";
// What arrives at a receiver, and how far its reading may be trusted.
const WeighReading = (() => {
  const C = WeighCurves;

  const ANY = { protocols: ["ANT+", "Bluetooth"], channels: "unlimited", pairs: "can", balance: "can", metrics: "can" };
  const reception = (data, product, receiver) => {
    const r = data.reception, able = (word) => r.able.indexOf(word);
    const heard = r.heard.findIndex((set) => set.length === receiver.protocols.length &&
      set.every((protocol) => receiver.protocols.includes(protocol)));
    const free = r.free.indexOf(typeof receiver.channels === "number" && receiver.channels > 1 ? "unlimited" : receiver.channels);
    const place = (((heard * r.free.length + free) * 3 + able(receiver.pairs)) * 3 + able(receiver.balance)) * 3 +
      able(receiver.metrics);
    return r.outcomes[r.rows[product.reception][place]];
  };
  const doubledSide = (data, product, left) => {
    if (!left) return data.doubled;
    const sign = product.sides === "right" ? -1 : 1;
    const errors = left.map((share) => sign * (100 * (2 * (share / 100) - 1)));
    const low = Math.min(...errors), high = Math.max(...errors);
    return { low, expected: (low + high) / 2, high, standard: (high - low) / 2 / Math.sqrt(3) };
  };
  const crankError = (asked) => {
    const ridden = asked.newCrank === null ? asked.crank : asked.newCrank;
    return ridden === null || asked.setCrank === null ? null : 100 * (asked.setCrank / ridden - 1);
  };
  const reading = (data, product, outcome, asked) => {
    const none = (origin, because) => ({ value: null, low: null, high: null, origin, because, largest: "" });
    if (product.kind === "plain pedal") return none("not applicable", "measures nothing");
    if (outcome.mode === "unknown") return none("unknown", "unknown: reading mode");
    if (outcome.mode === "nothing") return none("none", "nothing arrives");
    if (outcome.mode === "one side only") return none("none", "one side is not a total power");
    if (product.reading.missing.length) return none("unknown", "unknown: " + product.reading.missing.join(", "));
    const causes = [...product.reading.causes];
    let half = 0;
    if (outcome.mode === "one side doubled") {
      const error = doubledSide(data, product, asked.left);
      causes.push(["doubled side", error.standard, error.expected, null]);
      half = (error.high - error.low) / 2;
    }
    causes.push(...product.reading.temperature);
    // the crank length is taken as rightly set: a setting must not choose the pedals
    const bias = Math.abs(C.sum(causes.map((c) => c[2])));
    const k = data.coverage;
    const expanded = bias + k * Math.hypot(...causes.map((c) => c[1]));
    // [name, standard, bias, standard at its kindest where nobody has measured it]
    const others = causes.filter((c) => c[0] !== "doubled side");
    const fixed = k * Math.hypot(...others.map((c) => c[1]));
    const kindest = k * Math.hypot(...others.map((c) => (c[3] === null ? c[1] : c[3])));
    const nearest = Math.max(bias - half, 0), ownBalance = outcome.mode !== "one side doubled" || Boolean(asked.left);
    const reach = causes.map((c) => Math.abs(c[2]) + k * c[1]);
    const most = Math.max(...reach);
    return {
      value: expanded,
      low: Math.min(nearest + kindest, expanded),
      // with what nobody has measured at its worst; null where the rider's own balance is not known either
      known_low: ownBalance ? Math.min(nearest + fixed, expanded) : null,
      high: Math.max(bias + half + fixed, expanded),
      origin: causes[0][0] === "bench bias" ? "worked out" : "worked out from claims",
      not_measured: causes.filter((c) => c[3] !== null).map((c) => c[0]),
      because: causes.map((c) => c[0]).join(", "),
      largest: most > 0 ? causes[reach.indexOf(most)][0] : "",
    };
  };
  const receiverName = (asked) => (asked.receivers.length ? "your receiver" : "any receiver (none stated)");

  return { ANY, reception, reading, crankError, receiverName };
})();

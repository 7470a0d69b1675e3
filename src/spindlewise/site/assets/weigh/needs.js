"use strict";
// Needs as filters: why a product is out, and what could not be checked.
const WeighNeeds = (() => {
  const N = WeighNumbers, R = WeighReading;

  // every one that fails is named
  const failures = (data, product, asked, outcome, paid, market) => {
    const out = [], unchecked = [], needs = product.needs;
    const fail = (need, because, safety = false) => out.push({ need, because, safety });
    if (paid.minor_units === undefined) fail("price", paid.because);
    else if (asked.budget !== null) {
      const cost = N.money(paid.minor_units, market.digits), over = N.subtract(cost, N.decimal(asked.budget));
      if (over.n > 0n) {
        fail("budget", "it costs " + N.moneyText(cost, market) + ", " + N.moneyText(over, market) + " over the budget");
      }
    }
    if (asked.kind !== "any" && product.kind !== asked.kind) fail("kind", "it is a " + product.kind);
    if (product.state === "not yet sold") fail("state", "it was not yet sold on " + data.as_of);
    else if (asked.states && !asked.states.includes(product.state)) fail("state", "it is " + (product.state === "clearance" ? "being sold off" : product.state));
    if (asked.mass !== null) {
      const limit = needs.rider_limit;
      if ("value" in limit) {
        if (limit.value < asked.mass) {
          fail("rider weight", "the maker's rider limit is " + N.general(limit.value) + " kg, below " +
            N.general(asked.mass) + " kg", true);
        }
      } else if (limit.absent !== "none") {
        fail("rider weight", "rider weight limit " + limit.absent + " (" + limit.because + ")", true);
      }
    }
    if (asked.shoes) {
      if (needs.bolts === "unknown") fail("cleats", "cleat drilling unknown", true);
      else if (needs.bolts !== asked.shoes) {
        fail("cleats", needs.bolts === "none" ? "it takes no cleat, and the shoes are " + asked.shoes
          : "its " + needs.bolts + " cleat does not fit " + asked.shoes + " shoes", true);
      } else if (asked.patterns && !asked.patterns.includes(needs.pattern)) {
        fail("cleats", "its cleat pattern is " + needs.pattern, true);
      }
    }
    const where = R.receiverName(asked);
    if (asked.both && outcome.mode !== "both sides") {
      if (outcome.mode === "unknown") unchecked.push("both sides on " + where + ": unknown");
      else fail("reading", where + " shows " + outcome.mode);
    }
    if (asked.balance && outcome.balance !== "arrives") {
      if (outcome.balance === "unknown") unchecked.push("balance on " + where + ": unknown");
      else fail("balance", "balance does not arrive at " + where);
    }
    if (asked.water) {
      const code = needs.ingress;
      if (!("code" in code)) {
        if (code.absent === "unknown") unchecked.push(asked.water + ": ingress code unknown");
        else fail("water", "ingress code: " + code.absent);
      } else {
        const answer = data.ingress.answers[code.code][data.ingress.needs.indexOf(asked.water)];
        if (answer === "u") unchecked.push(asked.water + ": " + code.code + " does not say");
        else if (answer === "n") fail("water", code.code + " does not satisfy " + asked.water);
      }
    }
    for (const [name, bound, found, unit, sense] of [
      ["weight", asked.grams, needs.weight, "g", -1],
      ["running time", asked.hours, needs.running_time, "h", 1],
      ["warranty", asked.warranty, needs.warranty, "years", 1],
    ]) {
      if (bound === null) continue;
      const word = sense < 0 ? "at most" : "at least";
      const measure = (value) => N.general(value) + " " + (unit === "years" && value === 1 ? "year" : unit);
      if ("value" in found) {
        if ((found.value - bound) * sense < 0) {
          fail(name, name + " " + measure(found.value) + " (" + found.grade + "), " + word + " " + measure(bound) + " asked");
        }
      } else if (found.absent === "unknown") unchecked.push(name + " " + word + " " + measure(bound) + ": unknown");
      else if (found.absent === "none") fail(name, name + ": none");
    }
    return { out, unchecked };
  };

  return { failures };
})();

"use strict";
// The form: fields that keep what is exact behind what is short, from the question and back into it.
const WeighForm = (() => {
  const N = WeighNumbers, Q = WeighQuestion, { byId, el } = WeighElements;
  const form = byId("w-form");
  const weightRows = [...form.querySelectorAll(".w-weight")];
  const OPEN = new Set(["grams", "hours", "warranty", "ride", "keep", "mass"]);
  const NUMBERS = ["grams", "hours", "warranty", "crank", "newCrank", "setCrank", "sole", "newSole", "ride", "keep", "mass"];

  // ---- number fields
  const setNumber = (field, value) => {
    const text = value === null || typeof value === "string" && !/\d/.test(value) ? "" : N.short(N.numberText(Number(value), 2));
    field.value = text;
    field.dataset.shown = text;
    field.dataset.exact = value === null ? "" : String(value);
  };
  const numberIn = (field) => {
    const bad = field.validity.badInput || field.validity.rangeOverflow || field.validity.rangeUnderflow ||
      (field.value !== "" && OPEN.has(field.name) && Number(field.value) <= 0);
    field.toggleAttribute("aria-invalid", bad);
    if (bad) field.setAttribute("aria-invalid", "true");
    if (bad) return null;
    if (field.value === field.dataset.shown) {
      const exact = field.dataset.exact;
      return exact === "" ? null : /^[a-z]+$/.test(exact) ? exact : Number(exact);
    }
    return field.value === "" ? null : Number(field.value);
  };

  // ---- boxes and lists
  const ticked = (name) => [...form.querySelectorAll(`input[name="${name}"]:checked`)].map((box) => box.value);
  const tick = (name, values) => {
    for (const box of form.querySelectorAll(`input[name="${name}"]`)) box.checked = values.includes(box.value);
  };
  const choose = (select, value, text = value) => {
    select.value = value;
    if (select.value === value) return;
    select.append(el("option", { value }, text));
    select.value = value;
  };

  // ---- receivers: one group of fields each, the first one counts
  const receiverGroups = () => [...byId("w-receivers").children];
  const ORDINALS = ["Your receiver", "Second receiver", "Third receiver"];
  const HEARD = { ant: ["ANT+"], bluetooth: ["Bluetooth"], "ant-bluetooth": ["ANT+", "Bluetooth"] };
  const addReceiver = (receiver) => {
    const group = byId("w-receiver").content.firstElementChild.cloneNode(true);
    const set = (field, value) => choose(group.querySelector(`[data-field="${field}"]`), String(value));
    set("protocols", Object.keys(HEARD).find((key) => HEARD[key].join() === receiver.protocols.join()));
    for (const field of ["channels", "pairs", "balance", "metrics"]) set(field, receiver[field]);
    byId("w-receivers").append(group);
    nameReceivers();
    return group;
  };
  const nameReceivers = () => {
    const groups = receiverGroups();
    groups.forEach((group, k) => {
      group.querySelector("legend").textContent = ORDINALS[k] + (k === 0 && groups.length > 1 ? ", the one that counts" : "");
      group.querySelector(".w-remove").setAttribute("aria-label", "Remove " + ORDINALS[k].toLowerCase());
    });
    byId("w-none-recorded").hidden = groups.length > 0;
    byId("w-add").hidden = groups.length >= Q.MOST_RECEIVERS;
  };
  const receiverIn = (group) => {
    const value = (field) => group.querySelector(`[data-field="${field}"]`).value;
    const channels = value("channels");
    return { protocols: HEARD[value("protocols")], channels: /^\d+$/.test(channels) ? Number(channels) : channels,
      pairs: value("pairs"), balance: value("balance"), metrics: value("metrics") };
  };

  // ---- the form from the question, and the question from the form
  const fill = (asked) => {
    for (const row of weightRows) {
      const points = asked.points[row.dataset.criterion] || 0;
      setNumber(row.querySelector(".w-points"), points);
      row.querySelector(".w-slide").value = Math.min(points, 100);
    }
    choose(form.elements.region, asked.region);
    form.elements.budget.value = form.elements.budget.dataset.shown = asked.budget === null ? "" : asked.budget;
    form.elements.budget.dataset.exact = form.elements.budget.value;
    byId("w-receivers").replaceChildren();
    asked.receivers.forEach(addReceiver);
    nameReceivers();
    for (const name of ["present", "kind"]) choose(form.elements[name], asked[name]);
    for (const name of ["shoes", "water"]) choose(form.elements[name], asked[name] || "");
    for (const name of NUMBERS) setNumber(form.elements[name], asked[name]);
    setNumber(byId("w-leftLow"), asked.left && asked.left[0]);
    setNumber(byId("w-leftHigh"), asked.left && asked.left[1]);
    tick("both", asked.both ? ["yes"] : []);
    tick("balance", asked.balance ? ["yes"] : []);
    tick("patterns", asked.patterns || []);
    tick("states", asked.states || []);
  };
  const takeIn = (before) => {
    const points = {};
    for (const row of weightRows) points[row.dataset.criterion] = numberIn(row.querySelector(".w-points")) || 0;
    const some = (values) => (values.length ? values : null);
    const budget = form.elements.budget, money = numberIn(budget);
    const [low, high] = [numberIn(byId("w-leftLow")), numberIn(byId("w-leftHigh"))];
    const ends = low === null || high === null ? null : [Math.min(low, high), Math.max(low, high)];
    return {
      ...before, points, region: form.elements.region.value, budget: money === null ? null : N.short(budget.value),
      receivers: receiverGroups().map(receiverIn), present: form.elements.present.value, kind: form.elements.kind.value,
      shoes: form.elements.shoes.value || null, patterns: form.elements.shoes.value ? some(ticked("patterns")) : null,
      both: ticked("both").length > 0, balance: ticked("balance").length > 0, water: form.elements.water.value || null,
      states: some(ticked("states")), left: ends,
      ...Object.fromEntries(NUMBERS.map((name) => [name, numberIn(form.elements[name])])),
    };
  };
  const withPrivate = () => ticked("private").length > 0;

  // ---- what the form says back
  const show = ({ asked, found }) => {
    for (const row of weightRows) {
      const k = found.criteria ? found.criteria.findIndex((c) => c.name === row.dataset.criterion) : -1;
      row.querySelector(".w-share").textContent = k < 0 ? "–" : WeighSaid.share(found.shares[k]);
      row.classList.toggle("w-idle", k < 0);
    }
    form.elements.budget.labels[0].textContent = "Budget in " + found.market.currency + ", tax in";
    const patterns = byId("w-patterns");
    if (patterns) patterns.hidden = !asked.shoes;
  };
  // a slider and its number move together; price and ownership are the same money, and never both count
  const MONEY = { price: "ownership", ownership: "price" };
  const weightMoved = (row, target) => {
    const slide = row.querySelector(".w-slide"), field = row.querySelector(".w-points");
    if (target === slide) setNumber(field, Number(slide.value));
    else slide.value = Math.min(Number(field.value) || 0, 100);
    const other = MONEY[row.dataset.criterion];
    byId("w-money-note").hidden = true;
    if (!other || !(Number(field.value) > 0)) return;
    const twin = weightRows.find((r) => r.dataset.criterion === other);
    if (!(Number(twin.querySelector(".w-points").value) > 0)) return;
    setNumber(twin.querySelector(".w-points"), 0);
    twin.querySelector(".w-slide").value = 0;
    byId("w-money-note").hidden = false;
  };
  const opened = (part, asked) => Boolean({
    present: asked.present !== "none",
    needs: asked.both || asked.balance || asked.states || asked.shoes || asked.water || asked.grams !== null,
    you: Q.hasPrivate(asked),
  }[part]);
  const openParts = (asked) => {
    for (const part of document.querySelectorAll(".w-more")) part.open = part.open || opened(part.dataset.part, asked);
  };

  return { form, fill, takeIn, show, tick, withPrivate, addReceiver, nameReceivers, weightMoved, openParts, MONEY };
})();

"use strict";
// The page: the form's state into the address and back, and the ranking drawn anew whenever something moves.
const WeighPage = (() => {
  const N = WeighNumbers, R = WeighRanking, B = WeighBeside, Q = WeighQuestion;
  const byId = (id) => document.getElementById(id);
  const data = JSON.parse(byId("w-data").textContent);
  const form = byId("w-form");
  let asked = Q.blank(data), found = null;

  // ---- elements; text is always set as text
  const put = (element, attributes, children) => {
    for (const [name, value] of Object.entries(attributes)) {
      if (value !== null && value !== undefined && value !== false) element.setAttribute(name, value === true ? "" : value);
    }
    element.append(...children.flat().filter((child) => child !== null && child !== ""));
    return element;
  };
  const el = (tag, attributes = {}, ...children) => put(document.createElement(tag), attributes, children);
  const svg = (tag, attributes = {}, ...children) => put(document.createElementNS("http://www.w3.org/2000/svg", tag), attributes, children);
  const hidden = { "aria-hidden": "true", focusable: "false" };
  const grades = new Map([...byId("w-grades").content.children].map((e) => [e.dataset.grade, e.firstElementChild]));
  const grade = (origin) => (grades.has(origin) ? grades.get(origin).cloneNode(true) : null);
  const two = (value) => N.numberText(value, 2);

  // ---- number fields keep what is exact behind what is short
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
  const OPEN = new Set(["grams", "hours", "warranty", "ride", "keep", "mass"]);
  const NUMBERS = ["grams", "hours", "warranty", "crank", "newCrank", "setCrank", "sole", "newSole", "ride", "keep", "mass"];
  const ticked = (name) => [...form.querySelectorAll(`input[name="${name}"]:checked`)].map((box) => box.value);
  const tick = (name, values) => {
    for (const box of form.querySelectorAll(`input[name="${name}"]`)) box.checked = values.includes(box.value);
  };
  const choose = (select, value, text = value) => {
    if (![...select.options].some((option) => option.value === value)) select.append(el("option", { value }, text));
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

  // ---- the form from the state, and the state from the form
  const weightRows = [...form.querySelectorAll(".w-weight")];
  const fill = () => {
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
  const takeIn = () => {
    const points = {};
    for (const row of weightRows) points[row.dataset.criterion] = numberIn(row.querySelector(".w-points")) || 0;
    const some = (values) => (values.length ? values : null);
    const budget = form.elements.budget, money = numberIn(budget);
    const [low, high] = [numberIn(byId("w-leftLow")), numberIn(byId("w-leftHigh"))];
    const ends = low === null || high === null ? null : [Math.min(low, high), Math.max(low, high)];
    asked = {
      ...asked, points, region: form.elements.region.value, budget: money === null ? null : N.short(budget.value),
      receivers: receiverGroups().map(receiverIn), present: form.elements.present.value, kind: form.elements.kind.value,
      shoes: form.elements.shoes.value || null, patterns: form.elements.shoes.value ? some(ticked("patterns")) : null,
      both: ticked("both").length > 0, balance: ticked("balance").length > 0, water: form.elements.water.value || null,
      states: some(ticked("states")), left: ends,
      ...Object.fromEntries(NUMBERS.map((name) => [name, numberIn(form.elements[name])])),
    };
  };

  // ---- drawing
  const market = () => found.market;
  const name = (row) => row.product.name;
  const productLink = (row, text) => el("a", { href: "products/" + row.id + ".html" }, text);
  const strip = (score) => svg("svg", { class: "strip", viewBox: "0 0 100 12", preserveAspectRatio: "none", ...hidden },
    svg("rect", { x: 0, y: 4, width: 100, height: 4, class: "s-track" }),
    svg("rect", { x: two(score.low), y: 2, width: two(Math.max(score.high - score.low, 0.6)), height: 8, class: "s-span" }),
    svg("rect", { x: two(score.expected - 0.9), y: 0, width: "1.8", height: 12, class: "s-tick" }));
  const placeText = (row) => {
    if (row.held_back) return "";
    const last = row.rank + row.level;
    return last === row.rank ? String(row.rank) : row.rank + " to " + last;
  };
  const readingSpread = (figure) => {
    const down = figure.value - figure.low, up = figure.high - figure.value;
    if (Math.abs(down - up) < 1e-9) return up ? "± " + N.numberText(up, 1) + " %" : "";
    return "from " + N.numberText(figure.low, 1) + " to " + N.figureText(figure.high, "%");
  };
  // the figure behind a criterion: text, plus-minus, small print, grade
  const figureOf = (row, criterion) => {
    if (criterion.name === "price") return { text: Q.price(row, market()), small: row.paid.short, known: true };
    if (criterion.name === "detail") {
      return row.outcome.detail === null ? { text: "unknown" } : { text: row.outcome.detail, known: true, origin: "worked out" };
    }
    if (criterion.name === "reading_uncertainty") {
      const r = row.reading;
      return r.value === null ? { text: r.origin }
        : { text: N.figureText(r.value, "%"), spread: readingSpread(r), known: true, origin: r.origin };
    }
    if (criterion.name === "ownership") {
      const total = N.add(N.money(row.paid.minor_units, market().digits), row.own.beside);
      return { text: N.moneyText(total, market()), known: true, origin: "worked out" };
    }
    const figure = row.product.figures[criterion.name];
    return { text: figure.text, spread: figure.spread, known: figure.value !== null, origin: figure.origin };
  };
  // rows and cells are kept and changed in place: the bars then move, and little is laid out anew
  const setText = (node, text) => {
    const kept = node.firstChild;
    if (!kept) node.textContent = text;
    else if (kept.data !== text) kept.data = text;
  };
  const setAttribute = (node, name, value) => { if (node.getAttribute(name) !== value) node.setAttribute(name, value); };
  const cell = (label, attributes, ...children) => el("td", { role: "cell", "data-label": label, ...attributes }, ...children);
  const earns = (criterion) => {
    const room = svg("rect", { class: "w-bar-room", x: 0, y: 0, height: 8 });
    const filled = svg("rect", { class: "w-bar-earned", x: 0, y: 0, height: 8 });
    const earned = el("strong"), most = el("span"), figure = el("span");
    let behind = "";
    const td = cell(criterion.title, { class: "earns" },
      svg("svg", { class: "w-bar", viewBox: "0 0 100 8", preserveAspectRatio: "none", ...hidden }, room, filled),
      el("span", { class: "w-earned" }, earned, most), figure);
    const update = (row, share, longest) => {
      const merit = row.merits[criterion.name][1], length = (100 * share) / longest, f = figureOf(row, criterion);
      setAttribute(room, "width", two(length));
      setAttribute(filled, "width", two(length * merit));
      setText(earned, N.pointsText(100 * share * merit));
      setText(most, " of " + N.pointsText(100 * share));
      const key = [f.text, f.spread, f.small, f.origin].join("|");
      if (key === behind) return;
      behind = key;
      setText(figure, f.text);
      figure.className = (f.known ? "figure" : "figure absent") + (MONEY[criterion.name] ? " w-money" : "");
      while (figure.nextSibling) figure.nextSibling.remove();
      put(td, {}, [f.spread ? " " : null, f.spread ? el("span", { class: "spread" }, f.spread) : null, " ",
        f.small ? el("span", { class: "small" }, f.small) : f.known ? grade(f.origin) : null]);
    };
    return { td, update };
  };
  const tableRow = (id) => {
    const product = data.products.find((p) => p.id === id), held = product.notices.length > 0;
    const place = cell("Place", { class: "place" }, held ? el("span", { class: "held" }, "held back") : null);
    const th = el("th", { role: "rowheader", scope: "row" }, productLink({ id }, product.short), " ",
      el("span", { class: "small" }, product.maker), held ? " " : null, held ? el("span", { class: "flag" }, "safety notice") : null);
    const expected = el("span", { class: "figure" }), range = el("span", { class: "small" });
    const bar = strip({ low: 0, expected: 0, high: 0 }), [, span, mark] = bar.children;
    const at = el("span");
    const score = cell("Score", { class: "score" }, expected, bar, range), cells = new Map();
    const atCell = cell("Level with the first at", { class: "w-at" }, at);
    const tr = el("tr", { role: "row" });
    let columns = "";
    const update = (row, longest) => {
      if (!held) setText(place, placeText(row));
      setText(expected, N.pointsText(row.score.expected));
      setText(range, N.pointsText(row.score.low) + " to " + N.pointsText(row.score.high));
      setAttribute(span, "x", two(row.score.low));
      setAttribute(span, "width", two(Math.max(row.score.high - row.score.low, 0.6)));
      setAttribute(mark, "x", two(row.score.expected - 0.9));
      setText(at, row === found.leader ? "stands first" : Q.firstAt(row, market()));
      const named = found.criteria.map((c) => c.name).join();
      found.criteria.forEach((c, k) => {
        if (!cells.has(c.name)) cells.set(c.name, earns(c));
        cells.get(c.name).update(row, found.shares[k], longest);
      });
      if (named !== columns) tr.replaceChildren(place, th, score, atCell, ...found.criteria.map((c) => cells.get(c.name).td));
      columns = named;
    };
    return { tr, update };
  };
  const tableRows = new Map();
  const head = (text) => el("th", { role: "columnheader", scope: "col" }, text);
  const drawTable = () => {
    const table = byId("w-table"), criteria = found.missing ? [] : found.criteria;
    const longest = Math.max(...(found.shares || [1])), body = table.tBodies[0];
    const titles = ["Place", "Pedal", "Score", "Level with the first at", ...criteria.map((c) => c.title)];
    const heads = table.tHead.rows[0];
    if ([...heads.cells].map((th) => th.textContent).join("|") !== titles.join("|")) heads.replaceChildren(...titles.map(head));
    const rows = (found.order || []).map((row) => {
      if (!tableRows.has(row.id)) tableRows.set(row.id, tableRow(row.id));
      tableRows.get(row.id).update(row, longest);
      return tableRows.get(row.id).tr;
    });
    // only what changed its place is moved
    rows.forEach((tr, k) => { if (body.rows[k] !== tr) body.insertBefore(tr, body.rows[k] || null); });
    while (body.rows.length > rows.length) body.lastElementChild.remove();
    setText(byId("w-counts"), found.missing ? N.sentence(found.missing)
      : "What counts: " + N.listed(criteria.map((c, k) => N.within(c.title) + " " + Q.share(found.shares[k]))) + ".");
  };
  const roomWords = (room) => ({
    "at this price or less": () => "Stays first up to " + N.moneyText(N.money(room.minor_units, market().digits), market()) + ".",
    "at any price": () => "Stays first at any price.",
  }[room.outcome] || (() => ""))();
  const pickWords = () => {
    if (found.missing) return "No ranking: " + found.missing + ".";
    return found.order.length ? "No pick: everything that meets the needs is held back by a safety notice."
      : "No pick: nothing in the catalog meets all the needs.";
  };
  const readingWords = (row) => {
    const where = asked.receivers.length ? "Your receiver" : "A receiver that hears everything";
    const mode = row.outcome.mode === "unknown" ? "it is unknown what it shows" : "shows " + (row.outcome.detail || row.outcome.mode);
    const strays = row.reading.value === null ? "" : ", within " + N.figureText(row.reading.value, "%").replace(" ", "\u00a0") + " of the truth";
    return where + (row.outcome.mode === "unknown" ? ": " : " ") + mode + strays + ".";
  };
  const drawPick = () => {
    const pick = found.pick, box = byId("w-pick");
    byId("w-first").hidden = false;
    if (!pick) {
      box.replaceChildren(el("p", { class: "tone-important" }, pickWords()));
      return;
    }
    const level = pick.level ? "Level with it: " + N.listed(R.levelWith(found.order, pick).map(name)) +
      ". The figures cannot tell them apart; take the one that you like better." : null;
    box.replaceChildren(
      el("p", { class: "w-over" }, "First for you"),
      el("p", { class: "w-name" }, productLink(pick, name(pick))),
      el("p", { class: "w-price" }, Q.price(pick, market()), " ", el("span", { class: "small" }, pick.paid.short)),
      el("div", { class: "w-scored" }, el("span", { class: "w-score" }, N.pointsText(pick.score.expected)),
        el("span", { class: "w-of" }, "of 100"), strip(pick.score)),
      el("p", {}, readingWords(pick)),
      level ? el("p", { class: "w-level" }, level) : el("p", {}, roomWords(found.room)),
    );
  };
  const section = (id, title, ...children) =>
    el("section", {}, el("h2", { id }, title), ...children);
  const bullets = (items, columns = false) => el("ul", { class: columns ? "said w-columns" : "said" }, items.map((item) => el("li", {}, item)));
  const table = (caption, heads, rows) => el("div", { class: "scroll", role: "region", "aria-label": caption, tabindex: 0 },
    el("table", {}, el("caption", { class: "visually-hidden" }, caption),
      el("thead", {}, el("tr", {}, heads.map(([text, number]) => el("th", { scope: "col", class: number ? "num" : null }, text)))),
      el("tbody", {}, rows.map((cells) => el("tr", {}, cells.map((text, k) => (k
        ? el("td", { class: heads[k][1] ? "num" : null }, text) : el("th", { scope: "row" }, text))))))));
  const drawWhy = () => {
    if (!found.pick || found.order.length < 2) return null;
    const alike = R.levelWith(found.order, found.pick);
    return section("w-why", "Why not one of the others", bullets(found.order.filter((row) => row !== found.pick).map((row) => {
      const seen = R.differences(found, row, found.pick);
      const level = alike.includes(row) ? "level with the first" : R.behindWords(seen);
      return [el("strong", {}, name(row)), " (" + level + (row.held_back ? ", held back by a safety notice" : "") + "): " +
        R.differenceWords(seen) + "."];
    }), true));
  };
  const drawNotices = () => {
    const told = (found.order || []).filter((row) => row.held_back).flatMap((row) => row.product.notices);
    return told.length ? section("w-notices", "Safety notices", told.map((text) => el("p", { class: "caution-line" }, text))) : null;
  };
  const drawLadder = () => {
    if (!found.order) return null;
    const made = B.ladder(data, asked, found);
    const title = "What each gram saved costs";
    if (made.missing) return section("w-ladder", title, el("p", { class: "measure" }, "Cannot be said yet: " + made.missing + "."));
    const m = market(), label = (id) => data.products.find((p) => p.id === id).name;
    const steps = made.list.filter((s) => s.status === "rung" || s.status === "lighter and not dearer");
    const grams = (d) => N.plain(N.inSteps(d, 0));
    const against = (s) => {
      const free = s.extra.n === 0n, cost = "costs " + N.moneyText(s.extra, m) + (free ? " less" : "");
      if (s.status === "no reliable saving") return cost + "; the weighings cannot tell which of the two is lighter";
      const lighter = s.saving.expected.n > 0n;
      return grams(lighter ? s.saving.expected : N.subtract(N.decimal(0), s.saving.expected)) + " g " +
        (lighter ? "lighter" : "heavier") + ", " + cost + (s.each ? ", " + B.perGram(s.each, m) + " a gram" : "");
    };
    const off = (s) => {
      if (s.status === "dominated") {
        const who = s.by.includes(made.start.id) ? made.start.name : N.listed(s.by.slice(0, 3).map(label), "or");
        return against(s) + "; no lighter and no cheaper than " + who;
      }
      if (s.status === "extendedly dominated") return against(s) + "; a gram is cheaper between " + N.listed(s.by.map(label));
      return against(s);
    };
    const others = made.list.filter((s) => !steps.includes(s));
    return section("w-ladder", title,
      el("p", { class: "measure" }, "Against your " + made.start.name + ", " + made.start.figures.weight.text +
        ": already owned, so its price counts as nothing."),
      steps.length ? table("Steps worth their price, cheapest first",
        [["Pedal"], ["Saves", true], ["Range", true], ["Costs", true], ["A gram", true], ["Each further gram", true]],
        steps.map((s) => [name(s.row), grams(s.saving.expected) + " g", grams(s.saving.low) + " to " + grams(s.saving.high) + " g",
          N.moneyText(s.extra, m), s.each ? B.perGram(s.each, m) : "not dearer", s.further ? B.perGram(s.further, m) : ""]))
        : el("p", { class: "measure" }, "Nothing that meets your needs is reliably lighter."),
      others.length || made.leftOut.length ? el("details", {}, el("summary", {}, "Not on the ladder"),
        bullets([...others.map((s) => name(s.row) + ": " + off(s) + "."),
          ...made.leftOut.map((row) => name(row) + ": weight " + row.product.figures.weight.origin + ".")])) : null);
  };
  const giveOrTake = (spread) => (spread ? ", give or take " + N.numberText(spread, 1) + " mm" : "");
  const drawSwap = () => {
    const pick = found.pick, made = pick && B.swap(data, asked, pick.product);
    if (!pick) return null;
    const title = "What changes on your bike";
    if (!made) return section("w-swap", title, el("p", { class: "measure" }, "State your present pedals to see where the saddle goes."));
    const s = made.saddle, facts = [];
    facts.push(["Saddle", s.missing ? "cannot be said" : B.moved(s.change),
      s.missing ? "not known: " + N.listed(s.missing) : "common practice, millimetre for millimetre along the seat tube" + giveOrTake(s.plus_minus) +
        (s.unlike ? "; the two stack heights were brought to one basis with the cleat’s height" : "")]);
    facts.push(["Stance", made.stance ? (N.numberText(made.stance.change, 1) === "0.0" ? "no change"
      : N.numberText(Math.abs(made.stance.change), 1) + " mm " + (made.stance.change > 0 ? "wider" : "narrower")) : "cannot be said",
      made.stance ? "both feet together, with the same washers" + (asked.newCrank === null ? "" : ", beside what the new cranks’ Q-factor changes") + giveOrTake(made.stance.plus_minus) : "how far out one of the pedals sits is not known"]);
    facts.push(["Weight", made.weight ? (N.numberText(made.weight.expected) === "0" ? "no change" : N.numberText(Math.abs(made.weight.expected)) + " g " +
      (made.weight.expected < 0 ? "lighter" : "heavier")) : "cannot be said",
      made.weight ? "between " + N.numberText(made.weight.low, 0, true) + " and " + N.numberText(made.weight.high, 0, true) + " g" : "a weight is not known"]);
    if (made.cleats_change) facts.push(["Cleats", "change too", "mark where the old ones sit before taking them off"]);
    const wrong = R.crankError(asked);
    if (wrong) facts.push(["Crank setting", N.numberText(Math.abs(wrong), 1) + " % " + (wrong < 0 ? "low" : "high"),
      "power reads so while the head unit has another crank length than you ride: set it right; no score here counts that"]);
    return section("w-swap", title,
      el("p", { class: "measure" }, "From your " + made.old.name + " to the " + made.next.name + ":"),
      el("dl", { class: "facts" }, facts.map(([term, figure, small]) => el("div", {}, el("dt", {}, term),
        el("dd", {}, el("span", { class: "figure" }, figure), " ", el("span", { class: "small" }, small))))),
      bullets(data.cautions.slice(0, 2)));
  };
  const drawOut = () => {
    if (!found.excluded || !found.excluded.length) return null;
    const kind = (row) => row.out.some((f) => f.need === "kind");
    const rows = found.excluded.filter((row) => !kind(row)), other = found.excluded.filter(kind);
    return section("w-out", "Out, and why", bullets([
      ...rows.map((row) => [el("strong", {}, name(row)), ": " + row.out.map((f) => f.because).join("; ") + "." +
        (row.in_at ? " In, and level with the first, at " + N.moneyText(row.in_at, market()) + "." : "")]),
      ...(other.length ? [N.listed(other.map(name)) + ": of a kind that was not asked for."] : []),
    ], true));
  };
  const drawUnknowns = () => {
    const told = (found.order || []).filter((row) => row.unchecked.length);
    return told.length ? section("w-unknown", "What could not be checked",
      bullets(told.map((row) => name(row) + ": " + row.unchecked.join("; ") + "."))) : null;
  };

  const withPrivate = () => ticked("private").length > 0;
  const link = () => location.href.split("#")[0] + Q.write(data, asked, withPrivate());
  const drawTakes = () => {
    const kept = withPrivate() ? asked : Q.withoutPrivate(asked);
    byId("w-take").hidden = false;
    byId("w-copy-link").value = link();
    byId("w-copy-yaml").value = Q.yaml(data, asked, withPrivate());
    byId("w-copy-text").value = Q.words(data, asked, found, "weigh.html" + Q.write(data, asked, withPrivate()));
    byId("w-take-note").textContent = Q.hasPrivate(asked) && kept !== asked
      ? "Your weight and balance count above, and are left out of the link and the buyer file; whoever opens them may see another ranking."
      : "Whoever opens the link sees what you see.";
  };
  const drawNow = () => {
    const now = byId("w-now");
    now.hidden = false;
    now.replaceChildren(...(found.pick ? [el("span", { class: "small" }, "First for you"), " ", el("strong", {}, name(found.pick)), " ",
      el("span", {}, N.pointsText(found.pick.score.expected))] : [pickWords()]));
  };
  const drawForm = () => {
    for (const row of weightRows) {
      const k = found.criteria ? found.criteria.findIndex((c) => c.name === row.dataset.criterion) : -1;
      row.querySelector(".w-share").textContent = k < 0 ? "–" : Q.share(found.shares[k]);
      row.classList.toggle("w-idle", k < 0);
    }
    const unit = market().currency;
    form.elements.budget.labels[0].textContent = "Budget in " + unit + ", tax in";
    const patterns = byId("w-patterns");
    if (patterns) patterns.hidden = !asked.shoes;
  };
  let saying = 0;
  const say = () => {
    clearTimeout(saying);
    saying = setTimeout(() => {
      byId("w-said").textContent = found.pick ? name(found.pick) + " first, " + N.pointsText(found.pick.score.expected) + " points; " +
        found.order.length + " in the ranking." : pickWords();
    }, 800);
  };
  const draw = () => {
    found = R.rank(data, asked);
    drawForm();
    drawPick();
    drawTable();
    byId("w-follows").replaceChildren(...[drawNotices(), WeighPicture.draw(found, { el, svg, section, name }), drawWhy(), drawOut(), drawUnknowns(),
      drawSwap(), drawLadder()].filter(Boolean));
    drawTakes();
    drawNow();
  };

  // ---- the address: a step in the history for each change that is finished
  const address = () => Q.write(data, asked, withPrivate());
  const keep = () => {
    if (address() !== location.hash) history.pushState(null, "", address());
  };
  const fromAddress = () => {
    const hash = location.hash;
    if (hash && !hash.startsWith("#v=") && byId(hash.slice(1))) return;
    const read = Q.read(data, hash), before = asked;
    asked = read.asked;
    // what was kept out of the address stays as it is while stepping through the history
    if (!withPrivate()) for (const key of ["mass", "left"]) if (asked[key] === null) asked[key] = before[key];
    if (Q.hasPrivate(read.asked) && /[&](mass|left)=/.test(hash)) tick("private", ["yes"]);
    const note = byId("w-link-note");
    note.hidden = !read.ignored;
    note.textContent = !read.ignored ? "" : read.newer
      ? "The link that brought you here was made by a newer edition of this page and cannot be read. Reload the page; if that does not help, whoever publishes it should update Spindlewise and publish again. Until then the usual weighting stands below."
      : read.whole
      ? "The link that brought you here cannot be read, so the usual weighting stands below. Nothing is broken; set what you like."
      : "A part of the link that brought you here could not be read and is left out; all the rest counts.";
    fill();
    for (const part of document.querySelectorAll(".w-more")) part.open = part.open || opened(part.dataset.part);
    draw();
  };
  const opened = (part) => ({
    present: asked.present !== "none",
    needs: asked.both || asked.balance || asked.states || asked.shoes || asked.water || asked.grams !== null,
    you: Q.hasPrivate(asked),
  }[part] ? true : false);

  const MONEY = { price: "ownership", ownership: "price" };
  const moved = (event) => {
    const row = event.target.closest(".w-weight");
    if (row) {
      const slide = row.querySelector(".w-slide"), field = row.querySelector(".w-points");
      if (event.target === slide) setNumber(field, Number(slide.value));
      else slide.value = Math.min(Number(field.value) || 0, 100);
      const other = MONEY[row.dataset.criterion];
      byId("w-money-note").hidden = true;
      if (other && Number(field.value) > 0) {
        const twin = weightRows.find((r) => r.dataset.criterion === other);
        if (Number(twin.querySelector(".w-points").value) > 0) {
          setNumber(twin.querySelector(".w-points"), 0);
          twin.querySelector(".w-slide").value = 0;
          byId("w-money-note").hidden = false;
        }
      }
    }
    takeIn();
    draw();
    say();
  };
  const begin = () => {
    form.hidden = false;
    form.addEventListener("submit", (event) => event.preventDefault());
    form.addEventListener("input", (event) => { if (event.target.id !== "w-ready") moved(event); });
    form.addEventListener("change", (event) => {
      if (event.target.id === "w-ready") {
        asked = { ...Q.read(data, event.target.value).asked, mass: asked.mass, left: asked.left };
        fill();
        draw();
        say();
      }
      keep();
    });
    byId("w-add").addEventListener("click", () => {
      addReceiver({ ...R.ANY }).querySelector("select").focus();
      takeIn(); draw(); say(); keep();
    });
    byId("w-receivers").addEventListener("click", (event) => {
      if (!event.target.matches(".w-remove")) return;
      event.target.closest(".w-receiver").remove();
      nameReceivers();
      byId("w-add").focus();
      takeIn(); draw(); say(); keep();
    });
    byId("w-reset").addEventListener("click", () => {
      asked = Q.blank(data);
      tick("private", []);
      if (byId("w-ready")) byId("w-ready").value = "";
      fill(); draw(); say(); keep();
    });
    byId("w-take").addEventListener("click", async (event) => {
      const key = event.target.dataset.copy;
      if (!key) return;
      const field = byId("w-copy-" + key);
      field.select();
      try {
        await navigator.clipboard.writeText(field.value);
        byId("w-said").textContent = "Copied.";
        event.target.textContent = event.target.textContent.replace(/^Copy /, "Copied ");
      } catch {
        byId("w-said").textContent = "Selected; copy it with the keyboard.";
      }
    });
    window.addEventListener("popstate", fromAddress);
    fromAddress();
  };
  begin();
  return { data, asked: () => asked, found: () => found };
})();

"use strict";
// The ranking as a table: what each product earns on each criterion. Rows and cells are kept and changed in place.
const WeighTable = (() => {
  const N = WeighNumbers, S = WeighSaid;
  const { byId, put, el, svg, hidden, two, setText, setAttribute, grade, productLink, strip } = WeighElements;

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
  const figureOf = (row, criterion, market) => {
    if (criterion.name === "price") return { text: S.price(row, market), small: row.paid.short, known: true };
    if (criterion.name === "detail") {
      return row.outcome.detail === null ? { text: "unknown" } : { text: row.outcome.detail, known: true, origin: "worked out" };
    }
    if (criterion.name === "reading_uncertainty") {
      const r = row.reading;
      return r.value === null ? { text: r.origin }
        : { text: N.figureText(r.value, "%"), spread: readingSpread(r), known: true, origin: r.origin };
    }
    if (criterion.name === "ownership") {
      const total = N.add(N.money(row.paid.minor_units, market.digits), row.own.beside);
      return { text: N.moneyText(total, market), known: true, origin: "worked out" };
    }
    const figure = row.product.figures[criterion.name];
    return { text: figure.text, spread: figure.spread, known: figure.value !== null, origin: figure.origin };
  };

  // ---- a row: one that stands in the page already is taken over, others are made alike
  const cell = (label, attributes, ...children) => el("td", { role: "cell", "data-label": label, ...attributes }, ...children);
  const freshCell = (criterion) => cell(criterion.title, { class: "earns" },
    svg("svg", { class: "w-bar", viewBox: "0 0 100 8", preserveAspectRatio: "none", ...hidden },
      svg("rect", { class: "w-bar-earned", height: 8 })),
    el("span", { class: "w-earned" }, el("strong"), " of "), el("span"));
  const freshRow = (product) => {
    const held = product.notices.length > 0;
    return el("tr", { role: "row", "data-product": product.id },
      cell("Place", { class: "place" }, held ? el("span", { class: "held" }, "held back") : null),
      el("th", { role: "rowheader", scope: "row" }, productLink(product.id, product.short), " ",
        el("span", { class: "small" }, product.maker), held ? " " : null, held ? el("span", { class: "flag" }, "safety notice") : null),
      cell("Score", { class: "score" }, el("span", { class: "figure" }), strip({ low: 0, expected: 0, high: 0 }), el("span", { class: "small" })),
      cell("As good as the first at", { class: "w-at" }, el("span")));
  };
  const wordsIn = (td, part) => { const found = td.querySelector(part); return found ? found.textContent : ""; };
  const earns = (td) => {
    const [bar, points, figure] = td.children, [filled] = bar.children, [earned, most] = points.childNodes;
    let behind = [figure.textContent, wordsIn(td, ".spread"), wordsIn(td, ":scope > .small"), wordsIn(td, ".grade")].join("|");
    const update = (row, criterion, market, share, longest) => {
      const merit = row.merits[criterion.name][1], length = (100 * share) / longest, f = figureOf(row, criterion, market);
      setAttribute(bar, "width", two(length) + "%");
      setAttribute(filled, "width", two(100 * merit));
      setText(earned, N.pointsText(100 * share * merit));
      const given = " of " + N.pointsText(100 * share);
      if (most.data !== given) most.data = given;
      const key = [f.text, f.spread, f.small, f.known && !f.small ? f.origin : ""].join("|");
      if (key === behind) return;
      behind = key;
      setText(figure, f.text);
      figure.className = (f.known ? "figure" : "figure absent") + (WeighForm.MONEY[criterion.name] ? " w-money" : "");
      while (figure.nextSibling) figure.nextSibling.remove();
      put(td, {}, [f.spread ? " " : null, f.spread ? el("span", { class: "spread" }, f.spread) : null, " ",
        f.small ? el("span", { class: "small" }, f.small) : f.known ? grade(f.origin) : null]);
    };
    return { td, update };
  };
  const wired = (tr) => {
    const [place, th, score, at, ...earned] = tr.cells, [expected, bar, range] = score.children, [, span, mark] = bar.children;
    const cells = new Map(earned.map((td) => [td.dataset.label, earns(td)]));
    let columns = [...cells.keys()].join("|");
    const update = (row, found, longest) => {
      if (!row.held_back) setText(place, placeText(row));
      setText(expected, N.pointsText(row.score.expected));
      setText(range, N.pointsText(row.score.low) + " to " + N.pointsText(row.score.high));
      setAttribute(span, "x", two(row.score.low));
      setAttribute(span, "width", two(Math.max(row.score.high - row.score.low, 0.6)));
      setAttribute(mark, "x", two(row.score.expected - 0.9));
      setText(at.firstElementChild, row === found.leader ? "stands first" : S.firstAt(row, found.market));
      found.criteria.forEach((c, k) => {
        if (!cells.has(c.title)) cells.set(c.title, earns(freshCell(c)));
        cells.get(c.title).update(row, c, found.market, found.shares[k], longest);
      });
      const named = found.criteria.map((c) => c.title).join("|");
      if (named !== columns) tr.replaceChildren(place, th, score, at, ...found.criteria.map((c) => cells.get(c.title).td));
      columns = named;
    };
    return { tr, update };
  };
  const tableRows = new Map([...byId("w-table").tBodies[0].rows].map((tr) => [tr.dataset.product, wired(tr)]));
  const head = (text) => el("th", { role: "columnheader", scope: "col" }, text);
  // at first only as many rows are laid out as a screen can show; the rest is revealed when those have been seen
  const SEEN_FIRST = 20;
  let concealed = null;
  const reveal = () => {
    for (const tr of concealed || []) tr.hidden = false;
    concealed = [];
  };
  const draw = ({ found }) => {
    if (concealed) reveal();
    const table = byId("w-table"), criteria = found.missing ? [] : found.criteria;
    const longest = Math.max(...(found.shares || [1])), body = table.tBodies[0];
    const titles = ["Place", "Pedal", "Score", "As good as the first at", ...criteria.map((c) => c.title)];
    const heads = table.tHead.rows[0];
    if ([...heads.cells].map((th) => th.textContent).join("|") !== titles.join("|")) heads.replaceChildren(...titles.map(head));
    const rows = (found.order || []).map((row) => {
      if (!tableRows.has(row.id)) tableRows.set(row.id, wired(freshRow(row.product)));
      tableRows.get(row.id).update(row, found, longest);
      return tableRows.get(row.id).tr;
    });
    // only what changed its place is moved
    rows.forEach((tr, k) => { if (body.rows[k] !== tr) body.insertBefore(tr, body.rows[k] || null); });
    while (body.rows.length > rows.length) body.lastElementChild.remove();
    if (!concealed) {
      concealed = rows.slice(SEEN_FIRST);
      for (const tr of concealed) tr.hidden = true;
    }
    setText(byId("w-counts"), found.missing ? N.sentence(found.missing)
      : "What counts: " + N.listed(criteria.map((c, k) => N.within(c.title) + " " + S.share(found.shares[k]))) + ".");
  };

  return { draw, reveal, figureOf };
})();

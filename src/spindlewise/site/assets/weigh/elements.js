"use strict";
// Elements of the page, made and changed; text is always set as text.
const WeighElements = (() => {
  const N = WeighNumbers;

  const byId = (id) => document.getElementById(id);
  const put = (element, attributes, children) => {
    for (const [name, value] of Object.entries(attributes)) {
      if (value !== null && value !== undefined && value !== false) element.setAttribute(name, value === true ? "" : value);
    }
    element.append(...children.flat(Infinity).filter((child) => child !== null && child !== ""));
    return element;
  };
  const el = (tag, attributes = {}, ...children) => put(document.createElement(tag), attributes, children);
  const svg = (tag, attributes = {}, ...children) => put(document.createElementNS("http://www.w3.org/2000/svg", tag), attributes, children);
  const hidden = { "aria-hidden": "true", focusable: "false" };
  const two = (value) => N.numberText(value, 2);

  // what is kept is changed in place, and only where it changes: little is then laid out anew
  const setText = (node, text) => {
    const kept = node.firstChild;
    if (!kept) node.textContent = text;
    else if (kept.data !== text) kept.data = text;
  };
  const setAttribute = (node, name, value) => { if (node.getAttribute(name) !== value) node.setAttribute(name, value); };

  // ---- what the page shows of many things
  const grades = new Map([...byId("w-grades").content.children].map((e) => [e.dataset.grade, e.firstElementChild]));
  const grade = (origin) => (grades.has(origin) ? grades.get(origin).cloneNode(true) : null);
  const name = (row) => row.product.name;
  const productPage = byId("weigh").dataset.products;
  const productLink = (id, text) => el("a", { href: productPage.replace("{}", id) }, text);
  const strip = (score) => svg("svg", { class: "strip", viewBox: "0 0 100 12", preserveAspectRatio: "none", ...hidden },
    svg("rect", { x: 0, y: 4, width: 100, height: 4, class: "s-track" }),
    svg("rect", { x: two(score.low), y: 2, width: two(Math.max(score.high - score.low, 0.6)), height: 8, class: "s-span" }),
    svg("rect", { x: two(score.expected - 0.9), y: 0, width: "1.8", height: 12, class: "s-tick" }));

  // ---- parts of the page
  const section = (id, title, ...children) => el("section", {}, el("h2", { id }, title), ...children);
  const measured = (...children) => el("p", { class: "measure" }, ...children);
  const bullets = (items, columns = false) =>
    el("ul", { class: columns ? "said w-columns" : "said" }, items.map((item) => el("li", {}, item)));
  const table = (caption, heads, rows) => el("div", { class: "scroll", role: "region", "aria-label": caption, tabindex: 0 },
    el("table", {}, el("caption", { class: "visually-hidden" }, caption),
      el("thead", {}, el("tr", {}, heads.map(([text, number]) => el("th", { scope: "col", class: number ? "num" : null }, text)))),
      el("tbody", {}, rows.map((cells) => el("tr", {}, cells.map((text, k) => (k
        ? el("td", { class: heads[k][1] ? "num" : null }, text) : el("th", { scope: "row" }, text))))))));
  // what opens is filled when it opens, and what was open stays open when it is drawn anew
  const open = new Set();
  const opening = (id, summary, build) => {
    const box = el("details", { id }, el("summary", {}, summary));
    const fill = () => { if (box.childElementCount === 1) box.append(...[build()].flat()); };
    if (open.has(id)) { box.open = true; fill(); }
    box.addEventListener("toggle", () => {
      if (box.open) { open.add(id); fill(); } else open.delete(id);
    });
    return box;
  };

  return { byId, put, el, svg, hidden, two, setText, setAttribute, grade, name, productLink, strip, section, measured, bullets, table, opening };
})();

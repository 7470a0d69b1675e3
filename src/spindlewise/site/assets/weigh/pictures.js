"use strict";
// What all pictures share: as wide as the screen has room for, a title, a description, axes, and their table.
const WeighPictures = (() => {
  const N = WeighNumbers, { byId, el, svg, section, opening, table } = WeighElements;
  const WIDEST = 720, NARROWEST = 240, AROUND = 26, GAP = 48, MOST_ROWS = 12;

  // ---- how much room there is; text then never shrinks with its picture
  let results = 0;
  const twoColumns = window.matchMedia("(min-width: 100rem)");
  const room = () => {
    if (!results) results = byId("w-results").clientWidth;
    const column = twoColumns.matches ? (results - GAP) / 2 : results;
    return Math.max(NARROWEST, Math.min(WIDEST, Math.floor(column) - AROUND));
  };
  const watch = (changed) => new ResizeObserver(([entry]) => {
    const before = room();
    results = entry.contentRect.width;
    if (room() !== before) changed();
  }).observe(byId("w-results"));

  // ---- numbers as places
  const at = (value) => N.numberText(value, 1);
  const scale = (from, to, start, end) => (value) => start + ((value - from) / (to - from || 1)) * (end - start);
  const niceStep = (span, most) => {
    const rough = Math.max(span / most, 1e-9), power = 10 ** Math.floor(Math.log10(rough));
    return [1, 2, 5, 10].map((k) => k * power).find((step) => step >= rough * 0.999999);
  };
  // round numbers from below the least to above the most
  const ticks = (least, most, count) => {
    const step = Math.max(1, niceStep(Math.max(most - least, 1), count));
    const from = Math.floor(least / step) * step, to = Math.ceil(most / step) * step;
    return { from, to, values: Array.from({ length: Math.round((to - from) / step) + 1 }, (_, k) => from + k * step) };
  };
  // as many along the bottom as have room for their labels
  const ticksAcross = (least, most, width) => {
    const label = 8 * wholeText(Math.ceil(Math.max(Math.abs(least), Math.abs(most)))).length + 22;
    return ticks(least, most, Math.max(2, Math.floor((width - 60) / label)));
  };
  const wholeText = (value) => N.moneyText(N.decimal(String(value)), { currency: "", digits: 0 }).trim().replace("-", "−");

  // ---- marks
  const text = (x, y, words, attributes = {}) => svg("text", { class: "p-text", x: at(x), y: at(y), ...attributes }, words);
  const rect = (x, y, width, height, attributes) =>
    svg("rect", { x: at(x), y: at(y), width: at(Math.max(width, 0)), height: at(height), ...attributes });
  const told = (words, ...marks) => svg("g", {}, svg("title", {}, words), ...marks);
  const acrossAxis = (values, x, top, bottom, write, grid = false) => values.flatMap((value) => [
    svg("path", { class: grid ? "p-grid" : "p-edge", d: `M${at(x(value))} ${at(grid ? top : bottom)}V${at(bottom + 5)}` }),
    text(x(value), bottom + 19, write(value), { "text-anchor": "middle" })]);
  const upAxis = (values, y, left, right, write) => values.flatMap((value) => [
    svg("path", { class: "p-grid", d: `M${at(left)} ${at(y(value))}H${at(right)}` }),
    text(left - 8, y(value) + 4, write(value), { "text-anchor": "end" })]);

  // ---- the picture in the page
  const drawing = (id, title, said, width, height, marks) => svg("svg", { class: "w-drawing", viewBox: `0 0 ${width} ${Math.ceil(height)}`,
    width, height: Math.ceil(height), role: "img", "aria-labelledby": id + "-title", "aria-describedby": id + "-desc" },
  svg("title", { id: id + "-title" }, title), svg("desc", { id: id + "-desc" }, said), marks);
  const figure = (id, drawn, caption, below, asTable) => el("figure", { class: "picture w-figure" },
    el("figcaption", {}, caption), el("div", { class: "w-drawn" }, drawn), below,
    asTable ? opening(id + "-table", "The figures as a table", () => table(...asTable())) : null);
  const part = (id, title, ...children) => section(id, title, ...children);

  return { room, watch, at, scale, ticks, ticksAcross, wholeText, text, rect, told, acrossAxis, upAxis, drawing, figure, part, MOST_ROWS };
})();

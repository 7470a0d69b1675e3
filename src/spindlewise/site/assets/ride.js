"use strict";
// The pictures of the page stand without this; with it, any stretch of the ride can be drawn by itself.
// In the one file that holds all pages there are several rides, each with its own ids.
for (const told of document.querySelectorAll('script[id$="ride-data"]')) {
  const ride = JSON.parse(told.textContent);
  const place = (told.closest(".leaf") || document).querySelector('[id$="closer"]');
  const count = ride.watts[0].length;
  const whole = [0, count];
  const LEAST = Math.min(count, Math.max(10, Math.ceil(20 / ride.step_s)));
  const HEIGHT = 300, LEFT = 52, RIGHT = 12, TOP = 10, BOTTOM = 34;
  const MOMENTS = [1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 900, 1200, 1800, 3600, 7200, 14400];
  let shown = whole;

  const make = (name, words, ...inside) => {
    const svg = ["svg", "path", "line", "rect", "text", "g", "title"].includes(name);
    const element = svg ? document.createElementNS("http://www.w3.org/2000/svg", name) : document.createElement(name);
    for (const [key, value] of Object.entries(words || {})) element.setAttribute(key, value);
    element.append(...inside);
    return element;
  };
  const two = (value) => String(value).padStart(2, "0");
  const clock = (second) => {
    const all = Math.round(Math.abs(second));
    const sign = second < 0 && all ? "-" : "";
    return sign + Math.floor(all / 3600) + ":" + two(Math.floor(all / 60) % 60) + ":" + two(all % 60);
  };
  const moment = (place) => ride.start_s + place * ride.step_s;
  const watts = (value) => (value === null ? "" : Math.round(value) + " W");

  const button = (words, act) => {
    const made = make("button", { type: "button" }, words);
    made.addEventListener("click", act);
    return made;
  };
  const all = button("Whole ride", () => show(...whole));
  const closer = button("Closer", () => scale(0.5));
  const wider = button("Wider", () => scale(2));
  const earlier = button("Earlier", () => slide(-0.5));
  const later = button("Later", () => slide(0.5));
  const choice = make("select", { id: place.id + "-part" }, make("option", { value: "" }, "a part of the ride"));
  ride.parts.forEach(([words], place) => choice.append(make("option", { value: place }, words)));
  choice.addEventListener("change", () => {
    if (choice.value === "") return;
    const [, start, end] = ride.parts[choice.value];
    show((start - ride.start_s) / ride.step_s, (end - ride.start_s) / ride.step_s);
  });
  const sheet = make("div", { class: "closer-sheet" });
  const said = make("p", { role: "status" });
  const body = make("tbody");
  const heads = ["Meter", "Average", "Least", "Most", "Seconds"].map((words, place) =>
    make("th", place ? { scope: "col", class: "num" } : { scope: "col" }, words));
  const table = make("table", {}, make("caption", {}, "What is shown, as recorded: zeros and lost seconds included"),
    make("thead", {}, make("tr", {}, ...heads)), body);
  const bar = make("div", { class: "closer-bar" }, all, closer, wider, earlier, later);
  if (ride.parts.length) bar.append(make("label", { for: choice.id }, "Go to"), choice);
  place.append(make("h3", {}, "Look closer"),
    make("p", { class: "measure" }, "Draw across the picture to choose a stretch, or use the buttons." +
      (ride.step_s > 1 ? " Each point is the mean of " + ride.step_s + " seconds." : "")),
    bar, sheet, said, make("div", { class: "scroll", role: "region", "aria-label": "Averages of what is shown", tabindex: "0" }, table));
  place.hidden = false;

  function show(from, to) {
    let low = Math.max(0, Math.floor(from)), high = Math.min(count, Math.ceil(to));
    if (high - low < LEAST) {
      low = Math.max(0, Math.min(Math.round((low + high - LEAST) / 2), count - LEAST));
      high = low + LEAST;
    }
    shown = [low, high];
    draw();
  }
  function scale(factor) {
    const middle = (shown[0] + shown[1]) / 2, half = (shown[1] - shown[0]) * factor / 2;
    choice.value = "";
    show(middle - half, middle + half);
  }
  function slide(part) {
    const length = shown[1] - shown[0];
    const low = Math.max(0, Math.min(shown[0] + Math.round(part * length), count - length));
    choice.value = "";
    show(low, low + length);
  }

  function draw() {
    const [low, high] = shown;
    const width = Math.max(sheet.clientWidth || 780, 280);
    const across = width - LEFT - RIGHT, up = HEIGHT - TOP - BOTTOM;
    const parts = ride.watts.map((row) => row.slice(low, high));
    const known = parts.map((row) => row.filter((value) => value !== null));
    const most = Math.max(1, ...known.map((row) => row.reduce((a, b) => Math.max(a, b), 0)));
    const least = Math.min(...known.map((row) => row.reduce((a, b) => Math.min(a, b), most)));
    const floor = least > most / 2 ? Math.floor(least * 0.95) : Math.min(0, least);
    const ceiling = most + (most - floor) * 0.05 || 1;
    const x = (i) => LEFT + across * (high - low > 1 ? i / (high - low - 1) : 0.5);
    const y = (value) => TOP + up * (1 - (value - floor) / (ceiling - floor));
    const title = "From " + clock(moment(low)) + " to " + clock(moment(high)) + ", " + clock((high - low) * ride.step_s) + " long.";
    const svg = make("svg", { viewBox: `0 0 ${width} ${HEIGHT}`, role: "img", "aria-label": "Power of each meter. " + title });
    const span = ceiling - floor;
    const step = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].find((each) => span / each <= 6) || 2000;
    for (let value = Math.ceil(floor / step) * step; value <= ceiling; value += step) {
      svg.append(make("line", { x1: LEFT, x2: width - RIGHT, y1: y(value), y2: y(value), class: "closer-grid" }),
        make("text", { x: LEFT - 6, y: y(value) + 4, "text-anchor": "end" }, value + (value === 0 ? " W" : "")));
    }
    const seconds = (high - low) * ride.step_s;
    const tick = MOMENTS.find((each) => seconds / each <= across / 90) || 28800;
    for (let second = Math.ceil(moment(low) / tick) * tick; second <= moment(high - 1); second += tick) {
      const at = x((second - moment(low)) / ride.step_s);
      svg.append(make("line", { x1: at, x2: at, y1: TOP + up, y2: TOP + up + 5, class: "closer-grid" }),
        make("text", { x: at, y: HEIGHT - 12, "text-anchor": "middle" }, clock(second)));
    }
    parts.forEach((row, meter) => {
      const perPixel = Math.ceil(row.length / across);
      let path = "", pen = "M";
      const to = (i) => { path += pen + x(i).toFixed(1) + " " + y(row[i]).toFixed(1); pen = "L"; };
      for (let i = 0; i < row.length; i += perPixel) {
        // the least and the most of each pixel, so that nothing is lost by drawing less
        let lowest = -1, highest = -1;
        for (let j = i; j < Math.min(i + perPixel, row.length); j += 1) {
          if (row[j] === null) continue;
          if (lowest < 0 || row[j] < row[lowest]) lowest = j;
          if (highest < 0 || row[j] > row[highest]) highest = j;
        }
        if (lowest < 0) { pen = "M"; continue; }
        to(Math.min(lowest, highest));
        if (lowest !== highest) to(Math.max(lowest, highest));
      }
      svg.append(make("path", { d: path, class: "closer-line ink-" + ride.strokes[meter], "stroke-dasharray": ride.dashes[meter] }));
    });
    const chosen = make("rect", { class: "closer-chosen", x: 0, y: TOP, width: 0, height: up });
    svg.append(chosen);
    sheet.replaceChildren(svg);
    letChoose(svg, chosen, width, across);
    said.textContent = title;
    body.replaceChildren(...parts.map((row, meter) => line(meter, known[meter])));
    all.disabled = wider.disabled = low === 0 && high === count;
    closer.disabled = high - low <= LEAST;
    earlier.disabled = low === 0;
    later.disabled = high === count;
  }

  function line(meter, values) {
    const key = make("svg", { width: 34, height: 8, viewBox: "0 0 34 8", class: "closer-key", "aria-hidden": "true" },
      make("path", { d: "M0 4H34", class: "closer-line ink-" + ride.strokes[meter], "stroke-dasharray": ride.dashes[meter] }));
    const mean = values.length ? values.reduce((a, b) => a + b, 0) / values.length : null;
    const least = values.length ? values.reduce((a, b) => Math.min(a, b)) : null;
    const most = values.length ? values.reduce((a, b) => Math.max(a, b)) : null;
    const cells = [watts(mean), watts(least), watts(most), String(values.length * ride.step_s)];
    return make("tr", {}, make("th", { scope: "row" }, key, ride.names[meter]),
      ...cells.map((text) => make("td", { class: "num" }, text)));
  }

  function letChoose(svg, chosen, width, across) {
    let begun = null;
    const at = (event) => {
      const box = svg.getBoundingClientRect();
      const px = (event.clientX - box.left) / box.width * width;
      return Math.max(0, Math.min(1, (px - LEFT) / across));
    };
    const mark = (one, other) => {
      chosen.setAttribute("x", LEFT + across * Math.min(one, other));
      chosen.setAttribute("width", across * Math.abs(one - other));
    };
    svg.addEventListener("pointerdown", (event) => {
      begun = at(event);
      svg.setPointerCapture(event.pointerId);
    });
    svg.addEventListener("pointermove", (event) => { if (begun !== null) mark(begun, at(event)); });
    svg.addEventListener("pointercancel", () => { begun = null; mark(0, 0); });
    svg.addEventListener("pointerup", (event) => {
      if (begun === null) return;
      const [from, to] = [begun, at(event)].sort((a, b) => a - b);
      begun = null;
      mark(0, 0);
      if ((to - from) * across < 6) return;
      const [low, high] = shown;
      choice.value = "";
      show(low + from * (high - low), low + to * (high - low));
    });
  }

  let before = 0;
  new ResizeObserver(() => {
    if (sheet.clientWidth === before) return;
    before = sheet.clientWidth;
    draw();
  }).observe(sheet);
  draw();
}

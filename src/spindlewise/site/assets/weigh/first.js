"use strict";
// What stands first, in large; and in small where the form covers the rest.
const WeighFirst = (() => {
  const N = WeighNumbers, O = WeighOrder, { byId, el, name, productLink, strip } = WeighElements;

  const roomWords = ({ room, market }) => ({
    "at this price or less": () => "Stays first up to " + N.moneyText(N.money(room.minor_units, market.digits), market) + ".",
    "at any price": () => "Stays first at any price.",
  }[room.outcome] || (() => ""))();
  const pickWords = (found) => {
    if (found.missing) return "No ranking: " + found.missing + ".";
    return found.order.length ? "No pick: everything that no need keeps out is held back by a safety notice."
      : "No pick: nothing in the catalog meets all the needs.";
  };
  const readingWords = (row, asked) => {
    const where = asked.receivers.length ? "Your receiver" : "A receiver that hears everything";
    const mode = row.outcome.mode === "unknown" ? "it is unknown what it shows" : "shows " + (row.outcome.detail || row.outcome.mode);
    const strays = row.reading.value === null ? "" : ", within " + N.figureText(row.reading.value, "%").replace(" ", "\u00a0") + " of the truth";
    return where + (row.outcome.mode === "unknown" ? ": " : " ") + mode + strays + ".";
  };
  const drawPick = ({ asked, found }) => {
    const pick = found.pick, box = byId("w-pick");
    byId("w-first").hidden = false;
    if (!pick) {
      box.replaceChildren(el("p", { class: "tone-important" }, pickWords(found)));
      return;
    }
    const level = O.levelSentences(found.order, pick, name);
    box.replaceChildren(
      el("p", { class: "w-over" }, "First for you"),
      el("p", { class: "w-name" }, productLink(pick.id, name(pick))),
      el("p", { class: "w-price" }, WeighSaid.price(pick, found.market), " ", el("span", { class: "small" }, pick.paid.short)),
      el("div", { class: "w-scored" }, el("span", { class: "w-score" }, N.pointsText(pick.score.expected)),
        el("span", { class: "w-of" }, "of 100"), strip(pick.score)),
      el("p", {}, readingWords(pick, asked)),
      ...(level.length ? level.map((text) => el("p", { class: "w-level" }, text)) : [el("p", {}, roomWords(found))]),
    );
  };
  const drawNow = ({ found }) => {
    const now = byId("w-now");
    now.hidden = false;
    now.replaceChildren(...(found.pick ? [el("span", { class: "small" }, "First for you"), " ", el("strong", {}, name(found.pick)), " ",
      el("span", {}, N.pointsText(found.pick.score.expected))] : [pickWords(found)]));
  };
  const saidWords = ({ found }) => (found.pick ? name(found.pick) + " first, " + N.pointsText(found.pick.score.expected) + " points; " +
    found.order.length + " in the ranking." : pickWords(found));

  return { drawPick, drawNow, saidWords };
})();

"use strict";
// The swap in the page: what changes on the bike.
const WeighSwapPart = (() => {
  const N = WeighNumbers, W = WeighSwap, { el, section, measured, bullets } = WeighElements;
  const TITLE = "What changes on your bike";

  const giveOrTake = (spread) => (spread ? ", give or take " + N.numberText(spread, 1) + " mm" : "");
  const saddleFact = (saddle) => ["Saddle", saddle.missing ? "cannot be said" : W.moved(saddle.change),
    saddle.missing ? "not known: " + N.listed(saddle.missing)
      : "common practice, millimetre for millimetre along the seat tube" + giveOrTake(saddle.plus_minus) +
        (saddle.unlike ? "; the two stack heights were brought to one basis with the cleat’s height" : "")];
  const stanceFact = (stance, asked) => {
    if (!stance) return ["Stance", "cannot be said", "how far out one of the pedals sits is not known"];
    const text = N.numberText(Math.abs(stance.change), 1);
    return ["Stance", text === "0.0" ? "no change" : text + " mm " + (stance.change > 0 ? "wider" : "narrower"),
      "both feet together, with the same washers" + (asked.newCrank === null ? "" : ", beside what the new cranks’ Q-factor changes") +
        giveOrTake(stance.plus_minus)];
  };
  const weightFact = (weight) => {
    if (!weight) return ["Weight", "cannot be said", "a weight is not known"];
    const text = N.numberText(Math.abs(weight.expected));
    return ["Weight", text === "0" ? "no change" : text + " g " + (weight.expected < 0 ? "lighter" : "heavier"),
      "between " + N.numberText(weight.low, 0, true) + " and " + N.numberText(weight.high, 0, true) + " g"];
  };
  const facts = (made, asked) => {
    const found = [saddleFact(made.saddle), stanceFact(made.stance, asked), weightFact(made.weight)];
    if (made.cleats_change) found.push(["Cleats", "change too", "mark where the old ones sit before taking them off"]);
    return found;
  };
  const listed = (found) => el("dl", { class: "facts" }, found.map(([term, figure, small]) => el("div", {}, el("dt", {}, term),
    el("dd", {}, el("span", { class: "figure" }, figure), " ", el("span", { class: "small" }, small)))));
  const draw = ({ data, asked, found }) => {
    const pick = found.pick, made = pick && W.swap(data, asked, pick.product);
    if (!pick) return null;
    if (!made) return section("w-swap", TITLE, measured("State your present pedals to see where the saddle goes."));
    const wrong = WeighReading.crankError(asked), told = facts(made, asked);
    if (wrong) {
      told.push(["Crank setting", N.numberText(Math.abs(wrong), 1) + " % " + (wrong < 0 ? "low" : "high"),
        "power reads so while the head unit has another crank length than you ride: set it right; no score here counts that"]);
    }
    return section("w-swap", TITLE, measured("From your " + made.old.name + " to the " + made.next.name + ":"),
      listed(told), WeighSwapPicture.draw(made, asked, "w-heights", "your pedals and the first"), bullets(data.cautions.slice(0, 2)));
  };

  return { draw, facts, listed };
})();

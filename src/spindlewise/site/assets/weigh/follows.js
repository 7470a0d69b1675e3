"use strict";
// What follows the ranking, part by part: safety notices at once, the rest as soon as there is time.
const WeighFollows = (() => {
  const { byId, el } = WeighElements;
  // in the order of the page; those without a function are drawn in a way of their own
  const PARTS = {
    notices: null, worlds: null, price: WeighPriceScore.draw, points: WeighContributions.draw, why: WeighReasons.why,
    turns: WeighTurnsPart.draw, versus: null, out: WeighReasons.out, unknowns: WeighReasons.unknowns,
    swap: WeighSwapPart.draw, ladder: WeighLadderPart.draw,
  };
  // each part has a place that stays, so that nothing else moves when it is drawn anew
  const places = new Map(Object.keys(PARTS).map((id) => [id, byId("w-follows").appendChild(el("div", { class: "w-part-" + id }))]));
  places.get("versus").append(byId("w-versus"));
  const into = (id, drawn) => places.get(id).replaceChildren(...[drawn].filter(Boolean));

  // a few worlds at a time
  const drawWorlds = (view) => {
    const worlds = view.found.pick && view.found.order.length > 1 ? WeighWorlds.begin(view) : null;
    return () => {
      if (worlds && worlds.step()) return true;
      into("worlds", worlds && WeighWorldsPart.draw(view, worlds));
      return false;
    };
  };
  const drawLater = (view, withPrivate) => {
    const drawn = Object.entries(PARTS).filter(([, part]) => part);
    byId("w-follows").setAttribute("aria-busy", "true");
    WeighLater.start([
      WeighTable.reveal,
      ...drawn.map(([id, part]) => () => into(id, part(view))),
      () => WeighVersusPart.draw(view),
      () => WeighCopies.draw(view, withPrivate),
      drawWorlds(view),
    ], () => byId("w-follows").removeAttribute("aria-busy"));
  };
  const draw = (view, withPrivate) => {
    into("notices", WeighReasons.notices(view));
    drawLater(view, withPrivate);
  };

  return { draw, drawLater };
})();

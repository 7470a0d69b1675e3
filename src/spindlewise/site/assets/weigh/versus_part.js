"use strict";
// Two products side by side in the page: the verdict, criterion by criterion, what preferring one costs, what moves.
const WeighVersusPart = (() => {
  const N = WeighNumbers, O = WeighOrder, P = WeighPictures, S = WeighSaid, T = WeighTable;
  const { byId, el, svg, name, productLink, grade, bullets, table } = WeighElements;
  const ID = "w-gains", ROW = 40, BAR = 14, LETTERS = 44;

  const verdict = ({ first, second, against, level, unknown }) => {
    const points = N.pointsText(Math.abs(against.total)), why = O.differenceWords(against), one = name(first);
    if (unknown) {
      return `Level only by what is not known, not by merit. By what is known, ${name(against.total > 0 ? first : second)} leads by ${points} points. ${one} ${why}.`;
    }
    if (level) return `Level: their scores differ by less than the figures leave open. Between level products, take the one that you like better. ${one} ${why}.`;
    const [ahead, who] = against.total > 0 ? [first, "It"] : [second, one];
    return `${name(ahead)} leads by ${points} points${ahead.held_back ? ", but a safety notice holds it back" : ""}. ${who} ${why}.`;
  };
  const costs = ({ first, second, levelAt }, market) => {
    if (!levelAt[0]) return ["Neither price nor ownership is weighed, so no price would change the order."];
    return [[first, second, levelAt[0]], [second, first, levelAt[1]]].flatMap(([row, rival, level]) => {
      const [one, other] = [name(row), name(rival)];
      if (level.outcome === "at this price or less") {
        return [`${one} scores no less than ${other} at ${N.moneyText(N.money(level.minor_units, market.digits), market)} or below.`];
      }
      if (level.outcome === "at any price") return rival.held_back ? [] : [`${one} scores no less than ${other} at any price.`];
      return [level.outcome === "at no price while it is held back" ? `${one} is held back by a safety notice, whatever it costs.`
        : `${one} scores less than ${other} at any price, even for nothing.`];
    });
  };
  const figure = (row, criterion, market) => {
    if (row.paid.minor_units === undefined && WeighForm.MONEY[criterion.name]) return el("span", { class: "absent" }, "unknown");
    const f = T.figureOf(row, criterion, market);
    return el("span", {}, el("span", { class: f.known ? "figure" : "figure absent" }, f.text), f.spread ? " " : null,
      f.spread ? el("span", { class: "spread" }, f.spread) : null, f.known && !f.small ? grade(f.origin) : null);
  };
  const signed = (points) => N.pointsText(points, true).replace("-", "−");

  // ---- bars to the side of whoever gains
  const gains = (found, seen) => {
    const width = P.room(), middle = width / 2, most = Math.max(...seen.against.parts.map((p) => Math.abs(p.points)), 0.1);
    const length = (points) => (Math.abs(points) / most) * (middle - LETTERS);
    const [one, other] = [seen.first.product.short, seen.second.product.short];
    const marks = seen.against.parts.map((part, k) => {
      const top = 26 + k * ROW, toFirst = part.points > 0, long = length(part.points), text = N.pointsText(Math.abs(part.points));
      const even = text === "0.0", end = toFirst ? middle - long - 6 : middle + long + 6;
      return P.told(`${part.title}: ${even ? "alike" : `${toFirst ? one : other} gains ${text} points`}`,
        P.text(middle, top + 12, part.title, { class: "p-text", "text-anchor": "middle" }),
        P.rect(toFirst ? middle - long : middle, top + 17, long, BAR, { class: toFirst ? "p-solid" : "p-pale" }),
        P.text(even ? middle + 6 : end, top + 29, even ? "alike" : text, { class: "p-row", "text-anchor": toFirst && !even ? "end" : "start" }));
    });
    return P.drawing(ID, "Who gains where", verdict(seen), width, 26 + seen.against.parts.length * ROW + 4, [
      P.text(0, 14, "← " + one, { class: "p-row" }), P.text(width, 14, other + " →", { class: "p-row", "text-anchor": "end" }), marks,
      seen.against.parts.map((_, k) => svg("path", { class: "p-edge", d: `M${P.at(middle)} ${26 + k * ROW + 15}v${BAR + 4}` }))]);
  };
  const counted = (found, seen) => {
    const points = new Map(seen.against.parts.map((part) => [part.criterion, part.points])), { first, second } = seen;
    return table(`Criterion by criterion; points are those by which ${first.product.name} leads`,
      [["What counts"], ["Counts", true], [first.product.short], [second.product.short], ["Points", true]],
      [...found.criteria.map((c, k) => [c.title, S.share(found.shares[k]), figure(first, c, found.market), figure(second, c, found.market),
        signed(points.get(c.name))]),
      ["Score", "", ...[first, second].map((row) => N.pointsText(row.score.expected)), signed(seen.against.total)]]);
  };
  // ---- the two lists: what is best by the ranking, or any product
  const SELECTS = ["w-one", "w-other"];
  const offer = (data) => {
    for (const id of SELECTS) {
      const select = byId(id);
      if (select.options.length === 1) select.append(...data.products.map((p) => el("option", { value: p.id }, p.name)));
    }
  };
  const show = (data, asked) => {
    offer(data);
    SELECTS.forEach((id, k) => { byId(id).value = asked.pair[k]; });
  };

  const draw = ({ data, asked, found }) => {
    const box = byId("w-versus-seen");
    show(data, asked);
    byId("w-versus").hidden = Boolean(found.missing);
    if (found.missing) return;
    const pair = WeighVersus.chosen(asked, found);
    if (!pair) {
      box.replaceChildren(el("p", { class: "measure" }, "Choose two different pedals."));
      return;
    }
    const seen = WeighVersus.compare(data, asked, found, pair), [first, second] = pair;
    const out = pair.filter((row) => row.out.length).map((row) => `${name(row)}: ${row.out.map((f) => f.because).join("; ")}.`);
    box.replaceChildren(
      el("p", { class: "measure w-verdict" }, verdict(seen)),
      ...pair.flatMap((row) => row.product.notices).map((text) => el("p", { class: "caution-line" }, text)),
      P.figure(ID, gains(found, seen), "A bar lies on the side of the pedal that gains, as long as the points that it gains.", counted(found, seen), null),
      el("h3", {}, "What preferring one costs"), bullets(costs(seen, found.market)),
      ...(out.length ? [el("h3", {}, "Needs that are not met"), bullets(out)] : []),
      el("h3", {}, "Changing from ", productLink(first.id, name(first)), " to ", productLink(second.id, name(second))),
      WeighSwapPart.listed(WeighSwapPart.facts(seen.swap, asked)),
      ...[WeighSwapPicture.draw(seen.swap, asked, "w-pair-heights", "the two side by side")].filter(Boolean),
      bullets(data.cautions.slice(0, 2)),
      el("h3", {}, "Disclosure"), bullets(pair.map((row) => row.product.disclosure)),
    );
  };

  const pairIn = () => SELECTS.map((id) => byId(id).value);
  const saidWords = ({ data, asked, found }) => {
    const pair = !found.missing && WeighVersus.chosen(asked, found);
    return pair ? verdict(WeighVersus.compare(data, asked, found, pair)) : "Choose two different pedals.";
  };

  return { draw, pairIn, saidWords, verdict, costs };
})();

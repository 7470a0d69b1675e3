"use strict";
// Why the others are not first: reasons, safety notices, who is out, and what could not be checked.
const WeighReasons = (() => {
  const N = WeighNumbers, O = WeighOrder, { el, name, section, bullets } = WeighElements;

  const why = ({ found }) => {
    if (!found.pick || found.order.length < 2) return null;
    const alike = O.levelWith(found.order, found.pick), unknown = O.onlyByUnknown(found.order, found.pick);
    return section("w-why", "Why not one of the others", bullets(found.order.filter((row) => row !== found.pick).map((row) => {
      const seen = O.differences(found, row, found.pick);
      const level = unknown.includes(row) ? O.behindWords(seen) + ", but level by what is not known"
        : alike.includes(row) ? "level with the first" : O.behindWords(seen);
      return [el("strong", {}, name(row)), " (" + level + (row.held_back ? ", held back by a safety notice" : "") + "): " +
        O.differenceWords(seen) + "."];
    }), true));
  };
  const notices = ({ found }) => {
    const told = (found.order || []).filter((row) => row.held_back).flatMap((row) => row.product.notices);
    return told.length ? section("w-notices", "Safety notices", told.map((text) => el("p", { class: "caution-line" }, text))) : null;
  };
  const out = ({ found }) => {
    if (!found.excluded || !found.excluded.length) return null;
    const kind = (row) => row.out.some((f) => f.need === "kind");
    const rows = found.excluded.filter((row) => !kind(row)), other = found.excluded.filter(kind);
    return section("w-out", "Out, and why", bullets([
      ...rows.map((row) => [el("strong", {}, name(row)), ": " + row.out.map((f) => f.because).join("; ") + "." +
        (row.in_at ? " In, and as good as the first, at " + N.moneyText(row.in_at, found.market) + "." : "")]),
      ...(other.length ? [N.listed(other.map(name)) + ": of a kind that was not asked for."] : []),
    ], true));
  };
  const unknowns = ({ found }) => {
    const told = (found.order || []).filter((row) => row.unchecked.length);
    return told.length ? section("w-unknown", "What could not be checked",
      bullets(told.map((row) => name(row) + ": " + row.unchecked.join("; ") + "."))) : null;
  };

  return { why, notices, out, unknowns };
})();

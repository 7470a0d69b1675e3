"use strict";
// The page: the form's state into the address and back, and the ranking drawn anew whenever something moves.
const WeighPage = (() => {
  const Q = WeighQuestion, F = WeighForm, { byId } = WeighElements;
  const data = JSON.parse(byId("w-data").textContent);
  let asked = Q.blank(data), found = null;

  let saying = 0;
  const say = (words = WeighFirst.saidWords) => {
    clearTimeout(saying);
    saying = setTimeout(() => { byId("w-said").textContent = words(view()); }, 800);
  };

  const view = () => ({ data, asked, found });
  const draw = () => {
    found = WeighRanking.rank(data, asked);
    F.show(view());
    WeighFirst.drawPick(view());
    WeighTable.draw(view());
    WeighFirst.drawNow(view());
    WeighFollows.draw(view(), F.withPrivate());
  };
  const drawLater = () => WeighFollows.drawLater(view(), F.withPrivate());

  // ---- the address: a step in the history for each change that is finished
  const address = () => Q.write(data, asked, F.withPrivate());
  const keep = () => {
    if (address() !== location.hash) history.pushState(null, "", address());
  };
  const fromAddress = () => {
    const hash = location.hash, anchor = hash && !hash.startsWith("#v=") && byId(hash.slice(1));
    // an anchor is no question; whoever comes in by one finds the usual ranking
    if (anchor && found) return;
    const read = Q.read(data, anchor ? "" : hash), before = asked;
    asked = read.asked;
    // what was kept out of the address stays as it is while stepping through the history
    if (!F.withPrivate()) for (const key of ["mass", "left"]) if (asked[key] === null) asked[key] = before[key];
    if (Q.hasPrivate(read.asked) && /[&](mass|left)=/.test(hash)) F.tick("private", ["yes"]);
    const note = byId("w-link-note");
    note.hidden = !read.ignored;
    note.textContent = !read.ignored ? "" : read.newer
      ? "The link that brought you here was made by a newer edition of this page and cannot be read. Reload the page; if that does not help, whoever publishes it should update Spindlewise and publish again. Until then the usual weighting stands below."
      : read.whole
      ? "The link that brought you here cannot be read, so the usual weighting stands below. Nothing is broken; set what you like."
      : "A part of the link that brought you here could not be read and is left out; all the rest counts.";
    F.fill(asked);
    F.openParts(asked);
    draw();
  };

  // ---- what the reader does
  const ask = (question) => { asked = question; F.fill(asked); draw(); say(); };
  const takeIn = () => { asked = F.takeIn(asked); draw(); say(); };
  const moved = (event) => {
    if (event.target.id === "w-ready") return;
    const row = event.target.closest(".w-weight");
    if (row) F.weightMoved(row, event.target);
    takeIn();
  };
  const begin = () => {
    F.form.hidden = false;
    F.form.addEventListener("submit", (event) => event.preventDefault());
    F.form.addEventListener("input", moved);
    F.form.addEventListener("change", (event) => {
      if (event.target.id === "w-ready") ask({ ...Q.read(data, event.target.value).asked, mass: asked.mass, left: asked.left });
      keep();
    });
    byId("w-add").addEventListener("click", () => {
      F.addReceiver({ ...WeighReading.ANY }).querySelector("select").focus();
      takeIn();
      keep();
    });
    byId("w-receivers").addEventListener("click", (event) => {
      if (!event.target.matches(".w-remove")) return;
      event.target.closest(".w-receiver").remove();
      F.nameReceivers();
      byId("w-add").focus();
      takeIn();
      keep();
    });
    byId("w-reset").addEventListener("click", () => {
      F.tick("private", []);
      if (byId("w-ready")) byId("w-ready").value = "";
      ask(Q.blank(data));
      keep();
    });
    byId("w-take").addEventListener("click", (event) => { if (event.target.dataset.copy) WeighCopies.copy(event.target); });
    byId("w-versus").addEventListener("change", () => {
      asked = { ...asked, pair: WeighVersusPart.pairIn() };
      drawLater();
      say(WeighVersusPart.saidWords);
      keep();
    });
    // the way down to the results leaves the question in the address
    byId("w-now").addEventListener("click", (event) => {
      event.preventDefault();
      byId("w-results").scrollIntoView();
      byId("w-results").focus({ preventScroll: true });
    });
    window.addEventListener("popstate", fromAddress);
    // on paper, and for whoever takes it along, all of it
    window.addEventListener("beforeprint", WeighLater.finish);
    byId("w-take").addEventListener("focusin", WeighLater.finish);
    fromAddress();
    WeighPictures.watch(drawLater);
  };
  begin();
  return { data, asked: () => asked, found: () => found };
})();

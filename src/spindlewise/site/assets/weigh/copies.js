"use strict";
// What the reader takes along: a link, a buyer for the command line, an answer in words.
const WeighCopies = (() => {
  const Q = WeighQuestion, { byId } = WeighElements;

  const draw = ({ data, asked, found }, withPrivate) => {
    const kept = withPrivate ? asked : Q.withoutPrivate(asked), fragment = Q.write(data, asked, withPrivate);
    byId("w-take").hidden = false;
    byId("w-copy-link").value = location.href.split("#")[0] + fragment;
    byId("w-copy-yaml").value = WeighSaid.yaml(data, asked, withPrivate);
    byId("w-copy-text").value = WeighSaid.words(data, asked, found, "weigh.html" + fragment);
    byId("w-take-note").textContent = Q.hasPrivate(asked) && kept !== asked
      ? "Your weight and balance count above, and are left out of the link and the buyer file; whoever opens them may see another ranking."
      : "Whoever opens the link sees what you see.";
  };
  const copy = async (button) => {
    WeighLater.finish();
    const field = byId("w-copy-" + button.dataset.copy);
    field.select();
    try {
      await navigator.clipboard.writeText(field.value);
      byId("w-said").textContent = "Copied.";
      button.textContent = button.textContent.replace(/^Copy /, "Copied ");
    } catch {
      byId("w-said").textContent = "Selected; copy it with the keyboard.";
    }
  };

  return { draw, copy };
})();

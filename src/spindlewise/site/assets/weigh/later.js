"use strict";
// What need not stand there at once is drawn as soon as the browser has nothing better to do, in order.
const WeighLater = (() => {
  const LONGEST_MS = 8, WAIT_MS = 100;
  let tasks = [], waiting = false, whenDone = () => {};

  const idle = window.requestIdleCallback ? (run) => window.requestIdleCallback(run, { timeout: WAIT_MS })
    : (run) => setTimeout(run, 1);
  // a task that says true has more to do
  const one = () => { if (!tasks[0]()) tasks.shift(); };
  const run = () => {
    waiting = false;
    const begun = performance.now();
    do one(); while (tasks.length && performance.now() - begun < LONGEST_MS);
    if (tasks.length) wait();
    else whenDone();
  };
  // not before the ranking has been seen
  const shown = new Promise((told) => {
    const afterFrame = () => requestAnimationFrame(() => setTimeout(told));
    if (document.readyState === "complete") afterFrame();
    else window.addEventListener("load", afterFrame, { once: true });
  });
  const wait = () => {
    if (waiting) return;
    waiting = true;
    shown.then(() => idle(() => { if (tasks.length) run(); else waiting = false; }));
  };
  // what was still to be done for an earlier question falls away
  const start = (some, done) => {
    tasks = some;
    whenDone = done;
    wait();
  };
  const finish = () => {
    if (!tasks.length) return;
    while (tasks.length) one();
    whenDone();
  };

  return { start, finish };
})();

"use strict";
// Which page is shown follows from the address alone, without this (see :target in the style). With it the window is
// named after the page, and a question in the address opens the page on which it can be weighed.
{
  const show = () => {
    const asks = location.hash.startsWith("#v=");
    document.body.classList.toggle("asks", asks);
    const at = document.getElementById(asks ? "weigh.html" : location.hash.slice(1));
    document.title = (at && at.closest(".leaf") || document.querySelector(".leaf")).dataset.title;
  };
  for (const moved of ["hashchange", "popstate"]) window.addEventListener(moved, show);
  show();
}

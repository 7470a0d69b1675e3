"use strict";
// Tables are in their right order without this; with it, a column's head becomes a button that sorts by it.
for (const table of document.querySelectorAll("table.sortable")) {
  const heads = [...table.tHead.rows[0].cells];
  const body = table.tBodies[0];
  const first = [...body.rows];
  const said = table.closest("section").querySelector('[role="status"]');
  const keyed = (row, column) => row.cells[column].dataset.key;
  const compare = (a, b) => {
    const x = Number(a), y = Number(b);
    return Number.isNaN(x) || Number.isNaN(y) ? (a < b ? -1 : a > b ? 1 : 0) : x - y;
  };
  const sortBy = (column, direction) => {
    const sign = direction === "up" ? 1 : -1;
    const rows = first.map((row, place) => ({ row, place, key: keyed(row, column) }));
    rows.sort((a, b) => {
      // what is unknown stands last, whichever way
      if (a.key === "" || b.key === "") return (a.key === "") - (b.key === "") || a.place - b.place;
      return sign * compare(a.key, b.key) || a.place - b.place;
    });
    body.append(...rows.map((entry) => entry.row));
    heads.forEach((head, place) => {
      if (place === column) head.setAttribute("aria-sort", direction === "up" ? "ascending" : "descending");
      else head.removeAttribute("aria-sort");
    });
    const unknown = rows.filter((entry) => entry.key === "").length;
    said.textContent = "Sorted by " + heads[column].textContent.trim() + ", " +
      (direction === "up" ? "ascending" : "descending") + (unknown ? "; " + unknown + " unknown, last" : "") + ".";
  };
  heads.forEach((head, column) => {
    const button = document.createElement("button");
    button.type = "button";
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener("click", () => {
      const now = head.getAttribute("aria-sort");
      const other = now === "ascending" ? "down" : "up";
      sortBy(column, now ? other : head.dataset.sort);
    });
  });
}

"use strict";
// A term and its arrow light up together, whichever is pointed at or reached by the keyboard.
(() => {
  const all = [...document.querySelectorAll("[data-action]")];
  const groups = new Map();
  for (const one of all) {
    const id = one.dataset.action ?? one.getAttribute("data-action");
    if (!groups.has(id)) groups.set(id, []);
    groups.get(id).push(one);
  }
  for (const mates of groups.values()) {
    if (mates.length < 2) continue;
    const light = (on) => () => mates.forEach((m) => m.classList.toggle("lit", on));
    for (const one of mates) {
      one.addEventListener("pointerenter", light(true));
      one.addEventListener("pointerleave", light(false));
      one.addEventListener("focus", light(true));
      one.addEventListener("blur", light(false));
      if (one.localName === "g") one.setAttribute("tabindex", "0");
    }
  }
})();

"use strict";
// The address of an answer leads to its refusal, if it is one; a screen reader is led there too.
document.getElementById("refused")?.focus();
// A stack of coats begins with two; the others come when they are asked for.
(() => {
  const coats = [...document.querySelectorAll(".coat")];
  const more = document.getElementById("more-coats");
  if (!more) return;
  const used = coat => coat.querySelector("select").value !== "";
  coats.forEach((coat, i) => { coat.hidden = i > 1 && !used(coat); });
  const tell = () => { more.hidden = coats.every(coat => !coat.hidden); };
  more.addEventListener("click", () => {
    const next = coats.find(coat => coat.hidden);
    if (next) { next.hidden = false; next.querySelector("select").focus(); }
    tell();
  });
  tell();
})();

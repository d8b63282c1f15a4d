// A stack of coats begins with two; the others come when they are asked for.
import { whenShown } from "./page.js";

whenShown("more-coats", more => {
  const coats = [...document.querySelectorAll(".coat")];
  const used = coat => coat.querySelector("select").value !== "";
  const offerMore = () => { more.hidden = coats.every(coat => !coat.hidden); };
  coats.forEach((coat, i) => { coat.hidden = i > 1 && !used(coat); });
  more.addEventListener("click", () => {
    const next = coats.find(coat => coat.hidden);
    if (next) { next.hidden = false; next.querySelector("select").focus(); }
    offerMore();
  });
  offerMore();
});

// An answer that is being computed, or an older one in its place, gives way to the newest by itself: the page looks
// again and takes over what has changed, unless somebody is typing in it.
import { shown, whenShown } from "./page.js";
import { visit } from "./visited.js";

const LOOK_AGAIN = 900, LONGEST = 6000; // ms
const state = { timer: 0 };
const waits = main => !!main.querySelector("[data-renewing]");
const address = () => location.pathname + location.search;
const typing = () => !!document.activeElement.closest("#main input, #main select, #main textarea");

whenShown("main", main => {
  clearTimeout(state.timer);
  if (waits(main)) state.timer = setTimeout(look, LOOK_AGAIN, { at: address(), html: main.innerHTML, wait: LOOK_AGAIN });
});

// What is known of the page: where it is, what it says, and how long to wait before the next look.
async function look({ at, html, wait }) {
  let next = { at, html, wait: Math.min(LONGEST, wait * 1.5) };
  try {
    const response = await fetch(at, { headers: { Accept: "text/html" }, credentials: "same-origin" }), text = await response.text();
    if (address() !== at) return;
    const main = new DOMParser().parseFromString(text, "text/html").getElementById("main");
    if (response.ok && main && main.innerHTML !== html && !typing()) {
      visit(at, text);
      document.getElementById("main").replaceWith(document.importNode(main, true));
      shown();
      return;
    }
  } catch { next.wait = LONGEST; }
  if (address() === at) state.timer = setTimeout(look, next.wait, next);
}

// An answer that is being computed, or an older one in its place, gives way to the newest by itself:
// the page looks again and takes over what has changed, unless somebody is typing in it.
import { request } from "./requests.js";

const LOOK_AGAIN = 900, LONGEST = 6000; // ms
const waits = main => !!main.querySelector("[data-renewing]");
const here = () => document.getElementById("main");
const typing = () => !!document.activeElement.closest("#main input, #main select, #main textarea");

async function look(wait) {
  let next = Math.min(LONGEST, wait * 1.5);
  try {
    const response = await request(location.href, { headers: { Accept: "text/html" } });
    if (response.ok) {
      const main = new DOMParser().parseFromString(await response.text(), "text/html").getElementById("main");
      if (!waits(main)) next = 0;
      if (main.innerHTML !== shown.html) takeOver(main);
    }
  } catch { next = LONGEST; }
  if (next) setTimeout(look, next, next);
}

function takeOver(main) {
  if (typing()) { setTimeout(takeOver, LOOK_AGAIN, main); return; }
  shown.html = main.innerHTML;
  here().replaceWith(document.adoptNode(main));
  document.dispatchEvent(new Event("bench:renewed"));
}

const shown = { html: here().innerHTML };
if (waits(here())) setTimeout(look, LOOK_AGAIN, LOOK_AGAIN);

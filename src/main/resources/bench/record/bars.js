// What the keyboard reaches must not lie behind Keep or the bar, whose heights change.
import { at, form } from "./elements.js";

const GAP = 10; // px

export function leaveRoom() {
  const keep = at("keep").parentElement;
  new ResizeObserver(() => {
    const bar = document.querySelector("nav.bar").getBoundingClientRect(), below = bar.width > bar.height ? bar.height : 0;
    const stays = !form.hidden && getComputedStyle(keep).position === "sticky";
    document.documentElement.style.scrollPaddingBottom = stays ? keep.offsetHeight + below + GAP + "px" : "";
  }).observe(keep);
}

export function giveRoomBack() { document.documentElement.style.scrollPaddingBottom = ""; }

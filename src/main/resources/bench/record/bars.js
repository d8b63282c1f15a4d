// What the keyboard reaches must not lie behind the risk above or the Keep below, whose heights change.
import { at, form } from "./elements.js";

const GAP = 10; // px

export function leaveRoom() {
  const above = at("live"), below = at("keep").parentElement, root = document.documentElement.style;
  const room = bar => form.hidden ? "0" : bar.offsetHeight + GAP + "px";
  const bars = new ResizeObserver(() => {
    root.scrollPaddingTop = room(above);
    root.scrollPaddingBottom = room(below);
  });
  bars.observe(above);
  bars.observe(below);
}

// Poison and fire of the chosen finish, with the way to its full cautions, shown without asking the bench: a dropped connection hides no caution.
import { at } from "./elements.js";

let shown = null;

export function showPoison() {
  const finish = at("c-finish");
  if (finish.value === shown) return;
  shown = finish.value;
  const text = finish.selectedOptions.length ? finish.selectedOptions[0].dataset.poison : "";
  at("live-poison").textContent = text;
  at("live-poison").hidden = !text;
  at("live-poison").href = "/finish?" + new URLSearchParams({ name: shown });
}

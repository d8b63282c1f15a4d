// Poison and fire of the chosen finish, with the way to its full cautions, shown without asking the bench: a dropped connection hides no caution.
import { at } from "./elements.js";

export function showPoison() {
  const finish = at("c-finish"), shown = finish.value;
  if (at("live-poison").dataset.of === shown) return;
  at("live-poison").dataset.of = shown;
  const text = finish.selectedOptions.length ? finish.selectedOptions[0].dataset.poison : "";
  at("live-poison").textContent = text;
  at("live-poison").hidden = !text;
  at("live-poison").href = "/finish?" + new URLSearchParams({ name: shown });
}

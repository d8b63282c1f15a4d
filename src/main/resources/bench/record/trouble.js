// The one sentence that says why an entry was not kept.
import { at } from "./elements.js";

export function trouble(text) {
  if (!at("trouble")) return;
  at("trouble").textContent = text || "";
  at("trouble").hidden = !text;
  if (text) at("trouble").scrollIntoView({ block: "center" });
}

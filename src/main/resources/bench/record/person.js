// Who is at the bench: this device remembers it.
import { recall, remember } from "../storage.js";
import { at, form } from "./elements.js";

const PERSON = "bench.person";

export function rememberPerson() {
  at("by").value = recall(PERSON, form.dataset.person);
  at("by").addEventListener("input", () => remember(PERSON, at("by").value.trim() || null));
}

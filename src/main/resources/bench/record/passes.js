// The passes of this entry, counted as they are made.
import { at, form } from "./elements.js";
import { changed, entry } from "./entry.js";

const USUAL = Number(form.passes.value);
export const passes = { counted: 0 };

export function count(by) {
  passes.counted = Math.max(0, passes.counted + by);
  form.passes.value = String(passes.counted ? madeBefore() + passes.counted : unlessCounted());
  showCounted();
  changed();
}

export function startCounting() {
  restoreCounted(0);
  form.passes.value = String(unlessCounted());
}

export function restoreCounted(counted) {
  passes.counted = counted;
  showCounted();
}

const madeBefore = () => entry.reading ? entry.reading.passes : 0;
const unlessCounted = () => entry.reading ? entry.reading.passes + 1 : USUAL;

function showCounted() { at("counted").textContent = passes.counted ? "(" + passes.counted + " so far)" : ""; }

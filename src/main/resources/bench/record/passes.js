// The passes of this entry. The first tap on + says that one was made; until then the number is the usual one.
import { at, form } from "./elements.js";
import { changed, entry } from "./entry.js";

export const passes = { counted: 0 };
const state = { usual: 1 };

export function beginPasses() { state.usual = Number(form.passes.value); }

// A pass more or less. What was typed is counted on from.
export function count(by) {
  const typed = form.passes.value.trim();
  if (!/^\d{1,4}$/.test(typed)) { unread(typed); return; }
  const typedOn = Number(typed) - madeBefore();
  const now = passes.counted || Number(typed) !== unlessCounted() ? typedOn : 0;
  if (by < 0 && !now) { if (typedOn > 1) passes.counted = typedOn - 1; else return; } else passes.counted = Math.max(0, now + by);
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
const unlessCounted = () => entry.reading ? entry.reading.passes + 1 : state.usual;

export function showCounted() {
  at("counted").textContent = passes.counted ? "(" + passes.counted + " so far)" : "(not counted)";
  form.passes.classList.toggle("usual", !passes.counted && form.passes.value.trim() === String(unlessCounted()));
}

function unread(typed) {
  const words = document.createElement("p"), row = at("passes-row");
  words.className = "unread";
  words.setAttribute("role", "alert");
  words.textContent = `The buttons step a whole number, not "${typed}"; write one.`;
  row.querySelector(".unread")?.remove();
  row.append(words);
}

// A form left half-way, to look up a window, comes back as it was left. It waits for this page alone.
import { form } from "./elements.js";
import { entry } from "./entry.js";
import { passes } from "./passes.js";
import { photo } from "./photo.js";
import { stopwatch } from "./stopwatch.js";

const DRAFT = "bench.draft";

// Everything on the form, but for who is at the bench.
export function snapshot() {
  const values = {};
  for (const e of form.elements) {
    if (!e.name || e.name === "by" || e.type === "radio" && !e.checked) continue;
    if (e.name !== "outcome") values[e.name] = e.value;
    else if (e.checked) values.outcome = [...values.outcome || [], e.value];
  }
  const { reading, correcting, resume } = entry;
  return { values, reading, correcting, resume, ...passes, ...stopwatch, photo: photo.id, search: location.search };
}

export function saveDraft() { if (!entry.pending) hold(snapshot()); }

export function dropDraft() { if (entry.resume) hold(entry.resume); else sessionStorage.removeItem(DRAFT); }

// A link with settings of its own goes before what was left, unless the page is only loaded again.
export function leftDraft() {
  const text = sessionStorage.getItem(DRAFT), left = text ? JSON.parse(text) : null;
  const led = location.search && performance.getEntriesByType("navigation")[0]?.type === "navigate";
  return left && !led && (!location.search || left.search === location.search) ? left : null;
}

const hold = draft => sessionStorage.setItem(DRAFT, JSON.stringify(draft));

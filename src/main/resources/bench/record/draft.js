// A form left half-way comes back as it was left, after a dead battery too: it lies on this device, one for each page
// that is open. A page that was closed leaves its own to be offered by the next.
import { uuid7 } from "../identity.js";
import { page } from "../page.js";
import { recall, remember } from "../storage.js";
import { form } from "./elements.js";
import { entry } from "./entry.js";
import { passes } from "./passes.js";
import { photo } from "./photo.js";
import { rememberPlace } from "./place.js";
import { stopwatch } from "./stopwatch.js";

const PREFIX = "bench.draft.", ANSWER = 150; // ms
const channel = new BroadcastChannel("bench.drafts");
const tab = sessionStorage.getItem("bench.tab") || uuid7();
sessionStorage.setItem("bench.tab", tab);
// Other open pages say that theirs is not left behind.
channel.addEventListener("message", e => { if (e.data.ask) channel.postMessage({ mine: PREFIX + tab }); });

// Everything on the form, but for who is at the bench.
export function snapshot() {
  const values = {};
  for (const e of form.elements) {
    if (!e.name || e.name === "by" || e.type === "radio" && !e.checked) continue;
    if (e.name !== "outcome") values[e.name] = e.value;
    else if (e.checked) values.outcome = [...values.outcome || [], e.value];
  }
  const { reading, correcting, resume } = entry;
  return { values, reading, correcting, resume, ...passes, ...stopwatch, photo: photo.id, search: location.search, at: Date.now() };
}

export function saveDraft() {
  if (entry.pending) return;
  const now = snapshot();
  if (!now.reading && !now.correcting) rememberPlace(now.values);
  keepDraft(now);
}

export const keepDraft = draft => remember(PREFIX + tab, draft);
export function dropDraft() { remember(PREFIX + tab, entry.resume || null); }

// A link with settings of its own goes before what was left, unless the page is only loaded again; what was seen or
// written is put aside then, to be offered.
export function leftDraft() {
  const left = recall(PREFIX + tab, null);
  if (!left) return null;
  const led = location.search && (page.fetched || performance.getEntriesByType("navigation")[0]?.type === "navigate");
  if (!led && (!location.search || left.search === location.search)) return left;
  if (worth(left)) remember(PREFIX + uuid7(), left);
  remember(PREFIX + tab, null);
  return null;
}

// Whether more was given than settings, which this device knows anyway.
export function worth(draft) {
  const { values: v, counted, laps, photo: picture, correcting } = draft;
  return !!(v.outcome?.length || v.note || v.depth || counted || laps?.length || picture || correcting);
}

// Drafts that no open page calls its own, the latest first, as { key, draft }.
export async function orphans() {
  const mine = new Set([PREFIX + tab]), hear = e => { if (e.data.mine) mine.add(e.data.mine); };
  channel.addEventListener("message", hear);
  channel.postMessage({ ask: true });
  await new Promise(done => setTimeout(done, ANSWER));
  channel.removeEventListener("message", hear);
  return Object.keys(localStorage).filter(key => key.startsWith(PREFIX) && !mine.has(key))
    .map(key => ({ key, draft: recall(key, null) })).filter(({ key, draft }) => {
      if (draft && worth(draft)) return true;
      remember(key, null);
      return false;
    }).sort((a, b) => b.draft.at - a.draft.at);
}

export const discard = key => remember(key, null);

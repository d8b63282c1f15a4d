// The panel that shows the entry just kept, until the next one. Other pages of this device keep entries too;
// undo and further passes are for the one shown here.
import { uuid7 } from "../identity.js";
import { forget } from "../photo-store.js";
import { connection } from "../connection.js";
import { add, drop, queue } from "../queue.js";
import { flush } from "../sending.js";
import { recall, remember } from "../storage.js";
import { at, form, there } from "./elements.js";
import { passesInWords } from "./words.js";

const LAST = "bench.last", RECENT = 600000, DEAF = 1200; // ms
// The entry shown, { id, kind, patch, code, before, passes, outcome, waiting, at }, and the end of the short deafness.
const state = { shown: null, deaf: 0 };

export function beginKept() { state.shown = null; }

export const shownEntry = () => state.shown;

// Shows the last entry of this device; a page that is opened soon after does so again.
export function showLast(last) {
  remember(LAST, last);
  show(last);
}

export function recentLast() {
  const last = recall(LAST, null);
  return last && (last.waiting || Date.now() - last.at < RECENT) ? last : null;
}

export function forgetLast() {
  const last = recall(LAST, null);
  if (last && state.shown && last.id === state.shown.id) remember(LAST, null);
}

// The log took an entry that had waited.
export function taken(id, code) {
  const last = recall(LAST, null), now = { waiting: false, code };
  if (last && last.id === id) remember(LAST, { ...last, ...now });
  if (there() && state.shown && state.shown.id === id) show({ ...state.shown, ...now });
}

// Another page of this device may have sent what this one shows.
export function keptElsewhere(e) {
  const last = e.key === LAST ? recall(LAST, null) : null;
  if (there() && last && state.shown && last.id === state.shown.id) show(last);
}

export function show(last) {
  if (!there()) return;
  if (at("kept").hidden) deafen();
  state.shown = last;
  at("kept").hidden = false;
  form.hidden = true;
  at("title").textContent = last.waiting ? "Kept on this device" : "Kept in the log";
  at("kept").className = last.waiting ? "waits" : "";
  at("kept-mark").textContent = last.outcome + " after " + passesInWords(last.passes);
  at("kept-title").textContent = last.kind === "patch" ? "Write on the tape" : "Further reading on";
  at("kept-code").textContent = last.code;
  at("kept-code").hidden = at("undo").hidden = at("further").hidden = false;
  showState();
  at("kept-code").classList.remove("struck");
  at("kept").focus();
}

export function hide() {
  state.shown = null;
  at("kept").hidden = true;
  form.hidden = false;
}

// Whether the log has it, or what it waits for.
export function showState() {
  const { shown } = state;
  if (!there() || !shown || at("undo").hidden) return;
  const item = queue().find(i => i.id === shown.id);
  const goesWhen = connection.turnedAway ? "until it is paired again" : "until the bench can be reached";
  at("kept-words").textContent = shown.outcome + " after " + passesInWords(shown.passes) + (shown.photo ? ", with a photo. " : ". ")
    + (!shown.waiting ? "It is in the log." : item && item.state !== "waiting" ? "It is not in the log yet: it waits on this device and needs you."
      : "It waits on this device " + goesWhen + ".");
}

// The panel may come to lie under the finger that tapped Keep: a second tap must not undo the entry
// or take its code out of sight. Inert buttons take no tap, no click and no key.
function deafen() {
  clearTimeout(state.deaf);
  at("kept-actions").inert = true;
  state.deaf = setTimeout(() => { at("kept-actions").inert = false; }, DEAF);
}

// What was never sent leaves the queue with all that hangs on it; for the rest the log is asked to undo it.
export function undo() {
  const last = state.shown, item = queue().find(i => i.id === last.id);
  if (item && item.tries === 0) {
    queue().filter(i => i.id === last.id || i.body.of_patch === last.id).forEach(i => { drop(i.id); forget(i.id); });
  } else {
    add("/entries/undo", { id: uuid7(), of: last.id, of_patch: last.patch, by: at("by").value.trim() }, "undo of " + last.code);
    flush();
  }
  forgetLast();
  showUndone(last);
}

// Of a patch nothing stands that could be read further; of a reading, its patch as it was before.
function showUndone(last) {
  const patch = last.kind === "patch", before = patch ? null : last.before;
  state.shown = before;
  at("title").textContent = "Taken back";
  at("kept").className = "undone";
  at("kept-title").textContent = patch ? "Strike it out on the tape" : "Reading taken back";
  at("kept-code").hidden = !patch;
  at("kept-code").classList.toggle("struck", patch);
  at("kept-words").textContent = patch ? "Taken back: " + last.code + " counts nowhere. Its code is not used again."
    : "Taken back: the reading counts nowhere." + (before ? " " + before.code + " is again " + before.outcome + " after " + passesInWords(before.passes) + "." : "");
  at("undo").hidden = true;
  at("further").hidden = !before;
  at("kept").focus();
}

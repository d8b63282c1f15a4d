// Keep: the entry goes into the queue; the panel shows it as soon as the bench replies, or after a while without.
import { connection } from "../connection.js";
import { tapeCode, uuid7 } from "../identity.js";
import { now } from "../moment.js";
import { add, addPhoto, announce, change, drop, queue } from "../queue.js";
import { flush } from "../sending.js";
import { dropDraft, keepDraft, saveDraft, snapshot } from "./draft.js";
import { at, form, there } from "./elements.js";
import { entry } from "./entry.js";
import { showLast, taken } from "./kept.js";
import { beyond } from "./limits.js";
import { seen } from "./outcome.js";
import { dropPhoto, photo } from "./photo.js";
import { dialled, settings } from "./settings.js";
import { signal } from "./signal.js";
import { resetWatch } from "./stopwatch.js";
import { remind } from "./tapes.js";
import { trouble } from "./trouble.js";
import { passesInWords } from "./words.js";

const SOON = 3000, AT_ONCE = 100; // ms

export function keepEntry() {
  trouble("");
  const outcome = seen();
  if (!outcome) { trouble("First tap what you see: clean, or any of tint, char and residue."); return; }
  if (entry.pending) return;
  const wrong = beyond(!!entry.reading);
  if (wrong) { trouble(wrong); return; }
  const { reading, correcting } = entry, tape = correcting ? correcting.tape : "", body = bodyOf(outcome, tape), { id } = body;
  const words = (tape ? tape + ": " : "") + outcome + " after " + passesInWords(Number(body.passes)) + ", "
    + (reading ? "further passes on " + reading.code : at("c-board").value + ", " + dialled());
  entry.pending = { id, kind: reading ? "reading" : "patch", patch: body.of_patch || id, passes: Number(body.passes), outcome,
    code: reading ? reading.code : tape || body.plan || "", before: reading, file: photo.file, photo: photo.id, by: body.by, draft: snapshot() };
  showBusy(true);
  dropDraft();
  // A corrected entry keeps its identity and its place: its photos and further readings wait behind it.
  if (correcting && queue().some(i => i.id === id)) change(id, i => ({ ...i, body, words, state: "waiting", sentence: "" }));
  else add(reading ? "/entries/reading" : "/entries/patch", body, words, { of: reading });
  const known = connection.reached;
  flush();
  // A bench that is known to be away is not waited for.
  setTimeout(() => { if (entry.pending && entry.pending.id === id) wait(); }, known ? SOON : AT_ONCE);
}

// A tap is seen to be heard at once.
export function showBusy(on) {
  if (!there()) return;
  at("keep").disabled = on;
  if (on) { at("keep").setAttribute("aria-busy", "true"); at("keep").textContent = "Keeping"; } else at("keep").removeAttribute("aria-busy");
}

function bodyOf(outcome, tape) {
  const { reading, correcting, sure } = entry;
  return { id: correcting ? correcting.id : uuid7(), at: correcting ? correcting.at : now(), outcome,
    passes: form.passes.value.trim(), soot: form.soot.value, note: at("note").value, depth: at("depth").value,
    by: at("by").value.trim(), sure, ...(reading ? { of_patch: reading.patch } : { ...settings(), ...plan() }), ...(tape ? { tape } : {}) };
}

// The plan that this patch fulfils; its code is on the tape already.
const plan = () => form.dataset.plan ? { plan: form.dataset.plan } : {};

// Not taken yet: the tape gets a code of this device's own, which the bench keeps.
function wait() {
  const done = entry.pending;
  if (done.kind === "patch" && !done.code) {
    done.code = tapeCode();
    change(done.id, i => ({ ...i, body: { ...i.body, tape: done.code }, words: done.code + ": " + i.words }));
  }
  settle(true);
}

function settle(waiting) {
  const { file, photo: photoId, by, ...done } = entry.pending;
  entry.pending = null;
  entry.correcting = null;
  delete done.draft;
  showBusy(false);
  if (there()) resetWatch();
  if (file) addPhoto(done.patch, done.code, file, by).then(() => { dropPhoto(photoId); flush(); },
    () => trouble("The photo could not be kept on this device; take it again when the bench can be reached."));
  signal(true);
  // A reload shows what was kept, whatever link led here.
  if (there() && location.pathname === "/record") history.replaceState(null, "", "/record");
  showLast({ ...done, photo: !!file, waiting, at: Date.now() });
}

export function replied(item, reply) {
  const { tape, plan: planned } = item.body, written = tape || planned;
  if (reply.status === 200 && written && reply.code !== written) remind(written, reply.code);
  if (entry.pending && item.id === entry.pending.id) {
    if (reply.status === 200) { entry.pending.code = reply.code; settle(false); } else putBack(item, reply);
  } else if (reply.status === 200) {
    taken(item.id, reply.code);
    announce();
  }
}

// The form is still there to be put right; a correction goes on waiting behind it.
function putBack(item, reply) {
  const { draft } = entry.pending;
  entry.pending = null;
  if (entry.correcting) entry.correcting.sentence = reply.sentence; else drop(item.id);
  signal(false);
  if (!there()) { keepDraft(draft); return; }
  showBusy(false);
  at("keep").textContent = entry.reading ? "Keep this reading" : "Keep this patch";
  saveDraft();
  trouble(reply.sentence);
  if (reply.status === 409) { entry.sure = true; at("keep").textContent = "I am sure: keep it"; }
}

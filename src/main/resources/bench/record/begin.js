// What the form is begun for: the next patch, a further reading, a correction, or a draft that comes back.
import { announce } from "../queue.js";
import { saveDraft, snapshot } from "./draft.js";
import { all, at, form } from "./elements.js";
import { changed, entry } from "./entry.js";
import { forgetLast, hide } from "./kept.js";
import { clearOutcome } from "./outcome.js";
import { restoreCounted, startCounting } from "./passes.js";
import { clearPhoto, restorePhoto } from "./photo.js";
import { arrange, lock, showFolded } from "./settings.js";
import { resetWatch, restoreWatch } from "./stopwatch.js";
import { trouble } from "./trouble.js";
import { passesInWords } from "./words.js";

// The next patch, or the draft that a correction had put aside.
export function next() {
  forgetLast();
  planned("");
  entry.correcting = null;
  if (entry.resume) { restore(entry.resume); saveDraft(); } else further(null);
  announce();
}

// A further reading of a patch, { patch, code, outcome, passes }; null for a new patch.
export function further(patch) {
  entry.reading = patch;
  entry.correcting = null;
  blank();
  changed();
  saveDraft();
}

// A patch that is half-way on the form comes back after the correction.
export function correct(item) {
  if (!form.hidden && !entry.correcting) entry.resume = snapshot();
  const { id, at: when, tape = "", of_patch: patch, ...values } = item.body;
  const reading = patch ? item.of || { patch, code: "this patch", outcome: "", passes: 0 } : null;
  planned(values.plan || "");
  restore({ values: { ...values, outcome: values.outcome.split("+") }, reading, resume: entry.resume, photo: null, lap: 0, laps: [], untimed: "",
    correcting: { id, at: when, tape, sentence: item.sentence }, counted: Math.max(0, Number(values.passes) - (reading ? reading.passes : 0)) });
  saveDraft();
  announce();
  form.scrollIntoView();
}

// The plan that the patch on the form fulfils, by its code.
function planned(code) {
  form.dataset.plan = code;
  const words = document.getElementById("plan-words");
  if (words && !words.textContent.startsWith("Plan " + code + ":")) words.hidden = true;
}

export function restore(left) {
  const { reading, correcting, resume } = left;
  Object.assign(entry, { reading, correcting, resume });
  blank();
  for (const e of form.elements) fill(e, left.values);
  arrange();
  restoreCounted(left.counted);
  restoreWatch(left);
  restorePhoto(left.photo);
  at("seen-more").open = !!(left.photo || left.values.note || left.values.depth);
  changed();
}

// Rig, board, finish, figure and knobs as this device left them.
export function take(values) {
  for (const e of form.elements) fill(e, { ...values, outcome: [], soot: "", passes: form.passes.value, note: "", depth: "" });
  arrange();
}

function fill(e, values) {
  const value = values[e.name];
  if (e.name === "outcome") e.checked = (value || []).includes(e.value);
  else if (value === undefined) { if (!entry.reading && e.closest(".turn")) e.value = ""; }
  else if (value === "none" && e.closest("#made")) e.value = "";
  else if (e.type === "radio") e.checked = e.value === value;
  else if (e.tagName !== "SELECT" || [...e.options].some(o => o.value === value)) e.value = value;
}

// The settings stay; what was seen goes.
function blank() {
  hide();
  showPurpose();
  showFolded();
  lock(!!entry.reading);
  clearOutcome();
  all("input[name=soot]", form).forEach(i => { i.checked = i.value === ""; });
  for (const id of ["note", "depth", "k-strokes", "k-stroke-length"]) at(id).value = "";
  clearPhoto();
  resetWatch();
  startCounting();
  trouble("");
  scrollTo(0, 0);
  at("title").focus({ preventScroll: true });
}

function showPurpose() {
  const { reading, correcting } = entry;
  at("title").textContent = correcting ? "Correct " + (reading ? "the reading on " + reading.code : correcting.tape || "this patch")
    : reading ? "Further passes on " + reading.code : "Record a patch";
  at("reading-of").textContent = (correcting ? correcting.sentence + " " : "")
    + (reading && reading.outcome ? reading.code + " was " + reading.outcome + " after " + passesInWords(reading.passes) + ". Its settings stay." : "");
  at("reading-of").hidden = !at("reading-of").textContent;
}

// The Record page: which tap, key or change does what, and what the form begins with.
import { page, whenShown } from "./page.js";
import { onChange } from "./queue.js";
import { onReply } from "./sending.js";
import { giveRoomBack, leaveRoom } from "./record/bars.js";
import { further, next, restore, take } from "./record/begin.js";
import { leftDraft, saveDraft } from "./record/draft.js";
import { at, beginWith, form, there } from "./record/elements.js";
import { changed, entry } from "./record/entry.js";
import { keepEntry, replied, showBusy } from "./record/keeping.js";
import { beginKept, keptElsewhere, recentLast, show, shownEntry, undo } from "./record/kept.js";
import { offerLeft } from "./record/offer.js";
import { cleanAlone } from "./record/outcome.js";
import { listen, openPad } from "./record/pad.js";
import { beginPasses, count, startCounting } from "./record/passes.js";
import { rememberPerson } from "./record/person.js";
import { choosePhoto, clearPhoto } from "./record/photo.js";
import { gone, ownPlace } from "./record/place.js";
import { askRisk } from "./record/risk.js";
import { arrange, takeFromRig } from "./record/settings.js";
import { offerSignal } from "./record/signal.js";
import { resetWatch, startOrStop, takeBackLast } from "./record/stopwatch.js";
import { trouble } from "./record/trouble.js";
import { showWaiting } from "./record/waiting.js";

onReply(replied);
onChange(showWaiting);
addEventListener("storage", keptElsewhere);
addEventListener("leaving", () => { if (there()) { if (!form.hidden) saveDraft(); giveRoomBack(); } });
whenShown("record", begin);

function begin(shown) {
  beginWith(shown);
  beginKept();
  beginPasses();
  Object.assign(entry, { reading: null, correcting: null, resume: null, sure: false });
  hear();
  listen();
  rememberPerson();
  offerSignal();
  leaveRoom();
  at("keep").disabled = false;
  fillFirst();
  showWaiting();
  offerLeft();
}

// What was left here, what a link brings, or the place of this device.
function fillFirst() {
  const left = leftDraft(), { readingId, readingCode, readingSeen } = form.dataset;
  clearPhoto();
  resetWatch();
  startCounting();
  if (!location.search && ownPlace()) takeOwnPlace();
  arrange();
  if (left) restore(left);
  else if (readingId) {
    const [outcome, passes] = readingSeen.split("|");
    further({ patch: readingId, code: readingCode, outcome, passes: Number(passes) });
  } else {
    askRisk();
    const last = recentLast();
    if (last && (!location.search || page.fetched === false && last.search === location.search)) show(last);
  }
  if (entry.pending) showBusy(true);
}

function takeOwnPlace() {
  const place = ownPlace(), missing = gone(place);
  take(place);
  if (missing.length) {
    at("place").open = true;
    trouble("This device was at " + missing.join(" and ") + ", which the log no longer has. Choose what is on the bench.");
  }
}

function hear() {
  const tap = (id, work) => at(id).addEventListener("click", work);
  at("c-rig").addEventListener("change", takeFromRig);
  form.addEventListener("change", e => {
    if (e.target.name === "outcome") { cleanAlone(e.target); if (!entry.sure) trouble(""); }
    else if (e.target !== at("signal")) { arrange(); changed(); }
  });
  form.addEventListener("input", e => { if (e.target.closest(".turn, #made") || e.target === at("depth")) changed(); });
  form.addEventListener("click", e => {
    const input = e.target.closest(".turn input, input[data-pad]");
    if (input && !input.disabled && e.detail !== 0) openPad(input);
  });
  form.addEventListener("keydown", e => {
    if (e.key === "Enter" && e.target.matches("input")) { e.preventDefault(); changed(); }
  });
  for (const kind of ["input", "change"]) form.addEventListener(kind, e => { if (e.target !== at("photo") && e.target !== at("by")) saveDraft(); });
  form.addEventListener("submit", e => { e.preventDefault(); keepEntry(); });
  at("photo").addEventListener("change", async () => { if (await choosePhoto()) saveDraft(); });
  tap("count", () => { count(1); saveDraft(); });
  tap("uncount", () => { count(-1); saveDraft(); });
  tap("watch", () => { startOrStop(); saveDraft(); });
  tap("unlap", () => { takeBackLast(); saveDraft(); });
  tap("next", next);
  tap("further", () => further(shownEntry()));
  tap("undo", undo);
}

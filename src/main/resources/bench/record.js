// The Record page: which tap, key or change does what, and what the form begins with.
import { onChange } from "./queue.js";
import { onReply } from "./sending.js";
import { leaveRoom } from "./record/bars.js";
import { further, next, restore } from "./record/begin.js";
import { leftDraft, saveDraft } from "./record/draft.js";
import { at, form } from "./record/elements.js";
import { changed, entry } from "./record/entry.js";
import { keepEntry, replied } from "./record/keeping.js";
import { keptElsewhere, recentLast, show, shownEntry, undo } from "./record/kept.js";
import { cleanAlone } from "./record/outcome.js";
import { listen, openPad } from "./record/pad.js";
import { count } from "./record/passes.js";
import { rememberPerson } from "./record/person.js";
import { choosePhoto } from "./record/photo.js";
import { askRisk } from "./record/risk.js";
import { arrange, takeFromRig } from "./record/settings.js";
import { startOrStop, takeBackLast } from "./record/stopwatch.js";
import { trouble } from "./record/trouble.js";
import { showWaiting } from "./record/waiting.js";

const tap = (id, work) => at(id).addEventListener("click", work);

at("c-rig").addEventListener("change", takeFromRig);
form.addEventListener("change", e => {
  if (e.target.name === "outcome") { cleanAlone(e.target); if (!entry.sure) trouble(""); }
  else { arrange(); changed(); }
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
tap("watch", () => { startOrStop(); saveDraft(); });
tap("unlap", () => { takeBackLast(); saveDraft(); });
tap("next", next);
tap("further", () => further(shownEntry()));
tap("undo", undo);
listen();
onReply(replied);
onChange(showWaiting);
addEventListener("storage", keptElsewhere);
rememberPerson();
leaveRoom();

arrange();
showWaiting();
const left = leftDraft(), { readingId, readingCode, readingSeen } = form.dataset;
if (left) restore(left);
else if (readingId) {
  const [outcome, passes] = readingSeen.split("|");
  further({ patch: readingId, code: readingCode, outcome, passes: Number(passes) });
} else {
  askRisk();
  const last = recentLast();
  if (last && !location.search) show(last);
}

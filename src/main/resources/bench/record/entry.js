// The entry that is on the form.
import { at } from "./elements.js";
import { showCounted } from "./passes.js";
import { askRisk } from "./risk.js";
import { trouble } from "./trouble.js";

export const entry = {
  reading: null, // the patch that is read further, { patch, code, outcome, passes }; null for a new patch
  correcting: null, // the waiting entry that is corrected, { id, at, tape, sentence }
  resume: null, // the draft that comes back after the correction
  pending: null, // what was kept and has had no reply yet
  sure: false, // whether the person is sure of a doubtful value
};

// What was refused or doubted is not on the form any more.
export function changed() {
  entry.sure = false;
  trouble("");
  at("keep").textContent = entry.reading ? "Keep this reading" : "Keep this patch";
  showCounted();
  askRisk();
}

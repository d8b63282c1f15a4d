// Offers what was left half-way on this device and no page shows any more.
import { forget } from "../photo-store.js";
import { restore } from "./begin.js";
import { discard, orphans, saveDraft } from "./draft.js";
import { at, there } from "./elements.js";
import { passesInWords } from "./words.js";

export async function offerLeft() {
  const left = (await orphans())[0];
  if (!there()) return;
  at("offer").hidden = !left;
  if (!left) return;
  at("offer-words").textContent = inWords(left.draft);
  at("offer-take").onclick = () => {
    discard(left.key);
    restore(left.draft);
    saveDraft();
    offerLeft();
  };
  at("offer-leave").onclick = () => {
    discard(left.key);
    if (left.draft.photo) forget(left.draft.photo);
    offerLeft();
  };
}

function inWords({ values, reading, photo, at: when }) {
  const d = new Date(when), seen = values.outcome?.length ? values.outcome.join("+") + " after " + passesInWords(Number(values.passes)) : "nothing seen yet";
  return [d.toLocaleDateString(undefined, { day: "numeric", month: "long" }) + " at " + d.toTimeString().slice(0, 5) + ": " + seen,
    reading ? "further passes on " + reading.code : values.board + ", power " + values.power,
    ...values.note ? ["\u201c" + values.note + "\u201d"] : [], ...photo ? ["with a photo"] : []].join("; ") + ".";
}

// What is seen on the patch: clean, which stands alone, or any of the marks.
import { all, form } from "./elements.js";

const boxes = () => all("input[name=outcome]", form);

// Such as "char+residue"; blank while nothing was tapped.
export const seen = () => boxes().filter(box => box.checked).map(box => box.value).join("+");

export function cleanAlone(tapped) {
  if (!tapped.checked) return;
  boxes().forEach(other => {
    if (other !== tapped && (tapped.value === "clean" || other.value === "clean")) other.checked = false;
  });
}

export function clearOutcome() { boxes().forEach(box => { box.checked = false; }); }

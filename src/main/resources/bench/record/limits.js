// The limits that hold for every rig and board; the bench knows all units, and looks again.
import { number, thousands } from "../numbers.js";
import { all, at, form } from "./elements.js";
import { labelOf, unitOf } from "./settings.js";

const MAY_BE_UNSET = ["pulse", "patch"];

// The sentence that refuses what is on the form, blank if nothing does. A further reading has no settings.
export function beyond(isReading) {
  return beyondPasses(form.passes.value.trim()) || beyondDepth(at("depth").value.trim())
    || (isReading ? "" : knobs().map(beyondKnob).find(sentence => sentence) || "");
}

function beyondPasses(typed) {
  return /^[1-9]\d{0,3}$/.test(typed) ? "" : `Passes must be a whole number, 1 or more, not "${typed}".`;
}

function beyondDepth(typed) {
  if (!typed) return "";
  if (thousands(typed)) return twoReadings("Depth removed", typed);
  return number(typed).value >= 0 ? "" : `Depth removed must be a number in µm, 0 or more, not "${typed}".`;
}

const knobs = () => all("section .turn input", form).filter(i => i !== form.passes && !i.closest("[hidden], #made"));

function beyondKnob(input) {
  const label = labelOf(input), own = unitOf(input.name), typed = input.value.trim();
  if (!typed) return MAY_BE_UNSET.includes(input.name) ? "" : `${label} is not set; give it in ${own}.`;
  if (thousands(typed)) return twoReadings(label, typed);
  const { value, unit: given } = number(typed), unit = given || own, most = unit === "%" ? 100 : Infinity;
  if (Number.isNaN(value)) return `${label} must be a number in ${own}, not "${typed}".`;
  if (!(value > 0)) return `${label} must be above 0 ${unit}, not ${value} ${unit}.`;
  return value > most ? `${label} must be between 0 and ${most} ${unit}, not ${value} ${unit}.` : "";
}

function twoReadings(label, typed) {
  return `${label} of ${typed} must be written without a comma, which could stand between thousands.`;
}

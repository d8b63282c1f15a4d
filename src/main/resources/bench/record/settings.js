// The settings on the form: what they are, how they read, which of them are shown and which may change.
import { all, at, form } from "./elements.js";

const PLACE = ["board", "finish", "rig"];
const SHORT = { width: "width", spacing: "spacing", spot: "spot", rep: "rate", pulse: "pulse", patch: "patch" };
const OF_RIG = ["spot", "rep", "pulse", "width", "figure", "lines", "standoff", "defocus", "air", "extraction"];

const rig = () => at("c-rig").selectedOptions[0];
const way = () => form.querySelector("input[name=form]:checked").value;
const powerUnit = () => form.querySelector("input[name=power_unit]:checked").value;

const made = () => all("#made input, #made select");

export const unitOf = key => form.querySelector(`[data-unit=${key}]`).textContent;
export const labelOf = input => input.closest(".knob").querySelector("label").firstChild.textContent.trim().replace(/,$/, "");

// What is sent to the bench: the place, every knob that is set, and how speed and power are given.
export function settings() {
  const values = {};
  for (const key of PLACE) values[key] = at("c-" + key).value;
  for (const input of all(".turn input", form)) if (input.value.trim()) values[input.name] = input.value.trim();
  // What is blank there was taken out, even where the rig has a usual value.
  for (const input of made()) if (input.value.trim()) values[input.name] = input.value.trim(); else if (OF_RIG.includes(input.name)) values[input.name] = "none";
  values.form = way();
  values.power_unit = powerUnit();
  return values;
}

// The knobs that tell one patch from the next, in words.
export function dialled() {
  const words = input => /\d$/.test(input.value.trim()) ? input.value.trim() + " " + unitOf(input.name) : input.value.trim();
  return [words(at("k-power")), ...all(`.of-${way()} .turn input`, form).map(i => labelOf(i).toLowerCase() + " " + words(i))].join(", ");
}

// The words on the folds, which are read while they are closed.
export function showFolded() {
  at("place-board").textContent = at("c-board").value;
  at("place-rest").textContent = [at("c-finish").value, at("c-rig").value, at("k-figure").value].filter(w => w).join(", ");
  at("lesser-words").textContent = lesser(() => true).join(", ");
  showMade();
}

const lesser = which => all("#lesser .turn input").filter(i => i.value && !i.closest("[hidden]") && which(i))
  .map(i => SHORT[i.name] + " " + i.value + "\u00a0" + unitOf(i.name));

// Shows how passes are made, in words.
function showMade() {
  at("made-words").textContent = made().filter(i => i.value)
    .map(i => i.closest(".knob") ? labelOf(i).toLowerCase() + " " + i.value + " " + unitOf(i.name)
      : /^(yes|no)$/.test(i.value) ? i.labels[0].firstChild.textContent.trim().toLowerCase() + " " + i.value : i.value).join(", ");
}

// Shows the knobs of this rig and of this way to give the speed.
export function arrange() {
  const now = way(), pulsed = rig().dataset.kind === "pulsed";
  for (const w of ["hand", "timed", "scan"]) all(".of-" + w, form).forEach(row => { row.hidden = w !== now; });
  all(".pulsed-only", form).forEach(row => { row.hidden = !pulsed; });
  form.querySelector("[data-unit=power]").textContent = powerUnit();
}

// Sets the knobs to what is usual for this rig.
export function takeFromRig() {
  for (const key of OF_RIG) at("k-" + key).value = rig().dataset[key] || "";
}

// The settings of a patch that is read further stay as they were burned: a line says them in place of the knobs.
export function lock(on) {
  all("#settings input, #settings button, #place select, #place .chooser input, #made select, #made input, #made button", form)
    .filter(i => !i.closest(".timed") || i.closest(".knob")).forEach(i => { i.disabled = on; });
  for (const id of ["settings", "made"]) at(id).classList.toggle("burned", on);
  at("as-burned").hidden = !on;
  if (on) at("as-burned").textContent = "Burned at " + [dialled(), ...lesser(i => !i.closest("[class*=of-]"))].join(", ") + ".";
}

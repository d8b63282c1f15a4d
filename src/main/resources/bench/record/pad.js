// The number pad, for gloves; a keyboard types into the field itself.
import { thousands } from "../numbers.js";
import { at } from "./elements.js";
import { labelOf } from "./settings.js";

const LONGEST = 9;
// The field that is set, and whether the next digit takes the place of what is on the pad.
const state = { input: null, fresh: true };

export function openPad(input) {
  Object.assign(state, { input, fresh: true });
  at("pad-title").textContent = input.dataset.pad || nameOf(input);
  at("pad-value").textContent = input.value;
  at("pad-sign").hidden = !(Number(input.dataset.least) < 0);
  at("pad").showModal();
}

function nameOf(input) {
  const unit = input.closest(".knob").querySelector("[data-unit]")?.textContent;
  return labelOf(input) + (unit ? ", " + unit : "");
}

export function listen() {
  at("pad").addEventListener("click", e => {
    const digit = e.target.closest("[data-digit]")?.dataset.digit;
    if (digit) press(digit);
  });
  // Enter sets what is on the pad, whichever key has the focus; Cancel alone keeps its own Enter.
  at("pad").addEventListener("keydown", e => {
    if (e.key === "Enter" && e.target !== at("pad-cancel")) {
      e.preventDefault();
      if (!e.repeat) set();
    } else if (/^[0-9.,]$/.test(e.key)) press(e.key);
    else if (e.key === "-" && !at("pad-sign").hidden) press("sign");
    else if (e.key === "Backspace") press("back");
  });
  at("pad-cancel").addEventListener("click", () => at("pad").close());
  at("pad-set").addEventListener("click", set);
}

function press(key) {
  const shown = at("pad-value");
  if (key === "back") { state.fresh = false; shown.textContent = shown.textContent.slice(0, -1); return; }
  if (key === "sign") {
    state.fresh = false;
    shown.textContent = shown.textContent.startsWith("-") ? shown.textContent.slice(1) : "-" + shown.textContent;
    return;
  }
  const have = state.fresh ? "" : shown.textContent;
  state.fresh = false;
  if (have.length < LONGEST && !(/[.,]/.test(key) && have.includes("."))) shown.textContent = have + key;
}

function set() {
  const typed = at("pad-value").textContent;
  state.input.value = thousands(typed) ? typed : typed.replace(",", ".");
  at("pad").close();
  state.input.dispatchEvent(new Event("input", { bubbles: true }));
}

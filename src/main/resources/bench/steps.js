// The step buttons of every knob. What is not read for sure stays as it was typed, and a sentence says why.
import { number, withoutSquare } from "./numbers.js";

const MOST_DECIMALS = 4;

export function listen() {
  document.addEventListener("input", e => e.target.closest(".knob")?.querySelector(".unread")?.remove());
  document.addEventListener("click", e => {
    const button = e.target.closest("button[data-step]");
    if (button) step(button);
  });
}

function step(button) {
  const input = document.getElementById(button.dataset.for), knob = input.closest(".knob");
  const own = knob.querySelector("[data-unit]")?.textContent ?? "", typed = input.value.trim();
  const have = typed ? number(typed) : { value: 0, unit: "" };
  const other = have.unit && have.unit.toLowerCase() !== withoutSquare(own).toLowerCase();
  const fraction = own === "%" && !have.unit && have.value > 0 && have.value <= 1;
  knob.querySelector(".unread")?.remove();
  if (Number.isNaN(have.value) || other || fraction || input.validity.patternMismatch) {
    knob.append(unread(typed, own, fraction));
    return;
  }
  const places = Math.max(decimals(button.dataset.step), decimals(String(have.value)));
  const next = Number((have.value + Number(button.dataset.step)).toFixed(Math.min(places, MOST_DECIMALS)));
  // A 1 that the buttons made is no fraction.
  const sign = own === "%" && next <= 1 ? "%" : "";
  if (next > 0) { input.value = next + sign; input.dispatchEvent(new Event("input", { bubbles: true })); }
}

const decimals = text => (text.split(".")[1] || "").length;

function unread(typed, own, fraction) {
  const words = document.createElement("p");
  words.className = "unread";
  words.setAttribute("role", "alert");
  words.textContent = fraction ? `The buttons do not step a bare ${typed}, which could be a fraction; write the number in % above 1, or with its % sign.`
    : own ? `The buttons step a number in ${own} without commas between thousands, not "${typed}"; write it that way.`
    : `The buttons step a whole number, not "${typed}"; write one.`;
  return words;
}

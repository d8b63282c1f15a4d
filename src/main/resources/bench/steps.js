// The step buttons of every knob. They stop at its ends. What is not read for sure stays as it was typed, and a
// sentence says why.
import { number, withoutSquare } from "./numbers.js";

const MOST_DECIMALS = 4, MOST_PERCENT = 100;

export function listen() {
  document.addEventListener("input", e => { const knob = e.target.closest(".knob"); if (knob) clear(knob); });
  document.addEventListener("click", e => {
    const button = e.target.closest("button[data-step]");
    if (button && !button.disabled) step(button);
  });
}

function step(button) {
  const input = document.getElementById(button.dataset.for), knob = input.closest(".knob");
  const own = knob.querySelector("[data-unit]")?.textContent ?? "", typed = input.value.trim();
  const have = typed ? number(typed) : { value: 0, unit: "" };
  const other = have.unit && have.unit.toLowerCase() !== withoutSquare(own).toLowerCase();
  const fraction = own === "%" && !have.unit && have.value > 0 && have.value <= 1;
  clear(knob);
  if (Number.isNaN(have.value) || other || fraction) {
    knob.append(unread(typed, own, fraction));
    return;
  }
  const by = Number(button.dataset.step), most = own === "%" ? MOST_PERCENT : Infinity;
  const places = Math.max(decimals(button.dataset.step), decimals(String(have.value)));
  const next = Math.min(most, Number((have.value + by).toFixed(Math.min(places, MOST_DECIMALS))));
  const least = input.dataset.least;
  if ((least ? next < Number(least) : next <= 0) && by < 0 || have.value >= most && by > 0) { end(knob, button, by > 0 ? "the most" : "less: tap the number"); return; }
  // A 1 that the buttons made is no fraction.
  input.value = next + (own === "%" && next <= 1 ? "%" : "");
  input.dispatchEvent(new Event("input", { bubbles: true }));
  if (next >= most) end(knob, button, "the most");
}

const decimals = text => (text.split(".")[1] || "").length;

function clear(knob) {
  knob.querySelectorAll(".unread, .end").forEach(words => words.remove());
  knob.querySelectorAll("[aria-disabled]").forEach(button => button.removeAttribute("aria-disabled"));
}

// The words stand in the line of the label, so that nothing moves under the finger.
function end(knob, button, words) {
  const span = document.createElement("span");
  span.className = "end";
  span.setAttribute("role", "status");
  span.textContent = " \u2013 " + words;
  knob.querySelector("label").append(span);
  button.setAttribute("aria-disabled", "true");
}

function unread(typed, own, fraction) {
  const words = document.createElement("p");
  words.className = "unread";
  words.setAttribute("role", "alert");
  words.textContent = fraction ? `The buttons do not step a bare ${typed}, which could be a fraction; write the number in % above 1, or with its % sign.`
    : own ? `The buttons step a number in ${own} without commas between thousands, not "${typed}"; write it that way.`
    : `The buttons step a whole number, not "${typed}"; write one.`;
  return words;
}

// Tapping the map asks what that place does; the two fields do the same for a keyboard.
import { live } from "./live.js";
import { number } from "./numbers.js";
import { whenShown } from "./page.js";

whenShown("map", begin);

function begin(map) {
  const svg = map.querySelector("svg.draw"), frame = frameOf(svg), { passes, query, ...ends } = map.dataset;
  const powers = axis(ends.lowPower, ends.highPower), speeds = axis(ends.lowSpeed, ends.highSpeed);
  const power = document.getElementById("m-power"), speed = document.getElementById("m-speed");
  const cross = crossOn(svg), state = { tapped: false };

  function ask() {
    const x = frame.x + frame.width * speeds.share(own(speed, "mm/s"));
    const y = frame.y + frame.height * (1 - powers.share(own(power, "%")));
    const inside = x >= frame.x && x <= frame.x + frame.width && y >= frame.y && y <= frame.y + frame.height;
    cross.setAttribute("d", inside ? `M${x - 34} ${y}h68M${x} ${y - 34}v68M${x - 22} ${y}a22 22 0 1 0 44 0a22 22 0 1 0-44 0` : "");
    if (inside && !state.tapped) showAround(svg, x);
    state.tapped = false;
    live(`/window/at?${query}&power=${encodeURIComponent(power.value)}&speed=${encodeURIComponent(speed.value)}&passes=${passes}`);
  }

  svg.addEventListener("click", e => {
    const at = new DOMPoint(e.clientX, e.clientY).matrixTransform(svg.getScreenCTM().inverse());
    power.value = powers.at(1 - (at.y - frame.y) / frame.height).toPrecision(3);
    speed.value = String(Number(speeds.at((at.x - frame.x) / frame.width).toPrecision(3)));
    state.tapped = true;
    ask();
  });
  power.addEventListener("input", ask);
  speed.addEventListener("input", ask);
  ask();
}

// A logarithmic axis between two ends: the share of the way at a value, and the value at a share.
function axis(lowEnd, highEnd) {
  const low = Number(lowEnd), high = Number(highEnd);
  return {
    share: value => Math.log(value / low) / Math.log(high / low),
    at: share => low * Math.pow(high / low, Math.min(1, Math.max(0, share))),
  };
}

// The value of a field above 0 in its own unit, else NaN: the place of a speed in another unit is known to
// the bench alone; its figures come all the same.
function own(input, unit) {
  const typed = number(input.value);
  return typed.value > 0 && (!typed.unit || typed.unit.toLowerCase() === unit) ? typed.value : NaN;
}

function frameOf(svg) {
  const line = svg.querySelector("rect.line");
  return Object.fromEntries(["x", "y", "width", "height"].map(n => [n, Number(line.getAttribute(n))]));
}

function crossOn(svg) {
  const cross = document.createElementNS("http://www.w3.org/2000/svg", "path");
  for (const [name, value] of [["fill", "none"], ["stroke", "#000"], ["stroke-width", "7"]]) cross.setAttribute(name, value);
  svg.append(cross);
  return cross;
}

// On a phone the map is wider than its frame.
function showAround(svg, x) {
  const paper = svg.closest(".paper");
  if (paper.scrollWidth > paper.clientWidth) paper.scrollLeft = svg.clientWidth * x / svg.viewBox.baseVal.width - paper.clientWidth / 2;
}

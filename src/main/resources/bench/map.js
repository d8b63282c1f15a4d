// Tapping the map asks what that place does; the two fields do the same for a keyboard. The figures come beside the finger.
import { live } from "./live.js";
import { number } from "./numbers.js";
import { whenShown } from "./page.js";

const SVG = "http://www.w3.org/2000/svg", BESIDE = 28; // px from the finger

whenShown("map", begin);

function begin(map) {
  const svg = map.querySelector("svg.draw"), frame = frameOf(svg), { passes, query, ...ends } = map.dataset;
  const powers = axis(ends.lowPower, ends.highPower), speeds = axis(ends.lowSpeed, ends.highSpeed);
  const power = document.getElementById("m-power"), speed = document.getElementById("m-speed");
  const cross = crossOn(svg), words = document.getElementById("at"), state = { tapped: null };

  function ask() {
    const x = frame.x + frame.width * speeds.share(own(speed, "mm/s"));
    const y = frame.y + frame.height * (1 - powers.share(own(power, "%")));
    const inside = x >= frame.x && x <= frame.x + frame.width && y >= frame.y && y <= frame.y + frame.height;
    for (const line of cross) line.setAttribute("d", inside ? `M${x - 46} ${y}h92M${x} ${y - 46}v92M${x - 28} ${y}a28 28 0 1 0 56 0a28 28 0 1 0-56 0` : "");
    state.tapped = inside ? { x, y } : null;
    words.hidden = true;
    live(`/window/at?${query}&power=${encodeURIComponent(power.value)}&speed=${encodeURIComponent(speed.value)}&passes=${passes}`);
  }

  svg.addEventListener("click", e => {
    const at = new DOMPoint(e.clientX, e.clientY).matrixTransform(svg.getScreenCTM().inverse());
    power.value = powers.at(1 - (at.y - frame.y) / frame.height).toPrecision(3);
    speed.value = String(Number(speeds.at((at.x - frame.x) / frame.width).toPrecision(3)));
    ask();
    state.byFinger = true;
  });
  const asked = () => { state.byFinger = false; ask(); };
  power.addEventListener("input", asked);
  speed.addEventListener("input", asked);
  map.addEventListener("risk", e => { if (state.tapped && state.byFinger) showBeside(words, svg, state.tapped, e.detail.word.split(": ").pop()); });
  asked();
}

// Above the finger, or below it at the upper edge, and never outside the drawing.
function showBeside(words, svg, { x, y }, text) {
  words.textContent = text;
  words.hidden = false;
  const at = new DOMPoint(x, y).matrixTransform(svg.getScreenCTM()), box = svg.parentElement.getBoundingClientRect();
  const left = Math.min(Math.max(4, at.x - box.left - words.offsetWidth / 2), box.width - words.offsetWidth - 4);
  const above = at.y - box.top - BESIDE - words.offsetHeight;
  words.style.left = left + "px";
  words.style.top = (above > 0 ? above : at.y - box.top + BESIDE) + "px";
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

// A light line under a dark one, to be seen on every ground.
function crossOn(svg) {
  return ["cross under", "cross"].map(name => {
    const line = document.createElementNS(SVG, "path");
    line.setAttribute("class", name);
    svg.append(line);
    return line;
  });
}

"use strict";
// Tapping the map asks what that place does; the two fields do the same for a keyboard.
(() => {
  const map = document.getElementById("map");
  if (!map) return;
  const data = map.dataset, svg = map.querySelector("svg.draw"), frame = svg.querySelector("rect.line");
  const power = document.getElementById("m-power"), speed = document.getElementById("m-speed");
  const [x, y, w, h] = ["x", "y", "width", "height"].map(n => Number(frame.getAttribute(n)));
  const between = (low, high, share) => low * Math.pow(high / low, share);
  const share = (low, high, value) => Math.log(value / low) / Math.log(high / low);
  const mark = document.createElementNS("http://www.w3.org/2000/svg", "path");
  mark.setAttribute("fill", "none");
  mark.setAttribute("stroke", "#000");
  mark.setAttribute("stroke-width", "7");
  svg.append(mark);

  let tapped = false;
  function ask() {
    // The place of a speed in another unit is known to the bench alone; its figures come all the same.
    const own = (input, unit) => { const n = Bench.number(input.value); return n.unit && n.unit.toLowerCase() !== unit ? NaN : n.value; };
    const p = own(power, "%"), s = own(speed, "mm/s");
    const cx = x + w * share(Number(data.lowSpeed), Number(data.highSpeed), s);
    const cy = y + h * (1 - share(Number(data.lowPower), Number(data.highPower), p));
    const inside = p > 0 && s > 0 && cx >= x && cx <= x + w && cy >= y && cy <= y + h;
    mark.setAttribute("d", inside ? `M${cx - 34} ${cy}h68M${cx} ${cy - 34}v68M${cx - 22} ${cy}a22 22 0 1 0 44 0a22 22 0 1 0-44 0` : "");
    const paper = svg.closest(".paper"), room = paper.scrollWidth - paper.clientWidth;
    if (room > 0 && inside && !tapped) paper.scrollLeft = svg.clientWidth * cx / 1180 - paper.clientWidth / 2;
    tapped = false;
    Bench.live(`/window/at?${data.query}&power=${encodeURIComponent(power.value)}&speed=${encodeURIComponent(speed.value)}&passes=${data.passes}`);
  }

  svg.addEventListener("click", e => {
    const at = new DOMPoint(e.clientX, e.clientY).matrixTransform(svg.getScreenCTM().inverse());
    const across = Math.min(1, Math.max(0, (at.x - x) / w)), up = Math.min(1, Math.max(0, 1 - (at.y - y) / h));
    power.value = between(Number(data.lowPower), Number(data.highPower), up).toPrecision(3);
    speed.value = String(Number(between(Number(data.lowSpeed), Number(data.highSpeed), across).toPrecision(3)));
    tapped = true;
    ask();
  });
  power.addEventListener("input", ask);
  speed.addEventListener("input", ask);
  ask();
})();

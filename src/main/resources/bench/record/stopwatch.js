// The stopwatch over a marked area: every stop counts a pass, and the mean of the passes is the time per pass.
import { at, there } from "./elements.js";
import { entry } from "./entry.js";
import { count } from "./passes.js";

const SHORTEST_PASS = 1, TICK = 100; // second, ms
const AT_REST = "Start and stop it with each pass over the marked area: each stop counts one pass.";

export const stopwatch = {
  lap: 0, // when the pass under way began, in seconds; 0 for none
  laps: [], // the passes timed, in seconds
  untimed: "", // the time per pass before the first of them
};
const hand = { timer: 0 };

const seconds = () => (performance.timeOrigin + performance.now()) / 1000;

export function startOrStop() {
  const { lap, laps } = stopwatch;
  // A second tap of a clumsy glove must neither count a pass nor stop the watch.
  if (lap && seconds() - lap < SHORTEST_PASS) {
    show("Tapped twice: a pass shorter than 1 s does not count, and the watch keeps running from the first tap.");
    return;
  }
  if (lap) {
    if (!laps.length) stopwatch.untimed = at("k-seconds").value;
    laps.push(seconds() - lap);
    stopwatch.lap = 0;
    showMean();
    count(1);
  } else stopwatch.lap = seconds();
  show();
}

export function takeBackLast() {
  stopwatch.laps.pop();
  showMean();
  count(-1);
  show();
  at("watch").focus();
}

export function resetWatch() { restoreWatch({ ...stopwatch, lap: 0, laps: [] }); }

export function restoreWatch({ lap, laps, untimed }) {
  Object.assign(stopwatch, { lap, laps: [...laps], untimed });
  show();
}

// The settings of a patch that is read further stay as they were burned.
function showMean() {
  const { laps, untimed } = stopwatch, mean = laps.reduce((a, b) => a + b, 0) / laps.length;
  if (!entry.reading) at("k-seconds").value = laps.length ? String(Math.round(mean * 10) / 10) : untimed;
}

function show(words) {
  const { lap, laps } = stopwatch;
  at("watch").setAttribute("aria-pressed", String(lap > 0));
  at("watch-do").textContent = lap ? "Stop: pass over the area is done" : laps.length ? "Start the next pass" : "Start the stopwatch";
  at("unlap").hidden = laps.length === 0;
  at("watch-words").textContent = words || (laps.length === 0 ? AT_REST
    : laps.length === 1 ? "One pass timed." : laps.length + " passes timed; their mean counts.");
  clearInterval(hand.timer);
  if (lap) hand.timer = setInterval(run, TICK);
  run();
}

// The seconds run in sight.
function run() {
  if (!there()) { clearInterval(hand.timer); return; }
  const { lap, laps } = stopwatch;
  at("watch-runs").textContent = (lap ? seconds() - lap : laps.length ? laps[laps.length - 1] : 0).toFixed(1) + " s";
}

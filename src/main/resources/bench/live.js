// The live risk: what a setting does, newest question first. While one is under way, only the latest waits.
// Without the bench, what it said last of the same setting is shown, marked with its time.
import { connection, found, lost, onConnection } from "./connection.js";
import { answer, request } from "./requests.js";
import { recall, remember } from "./storage.js";

const LOOK_AGAIN = 700, KNOWN = "bench.risks", MOST_KNOWN = 60;
const state = { asking: false, latest: null, newest: null };
const at = id => document.getElementById(id);
let touched = null;
for (const kind of ["pointerdown", "input"]) document.addEventListener(kind, e => { touched = e.target; });

export async function live(url) {
  state.latest = state.newest = url;
  if (state.asking) return;
  state.asking = true;
  while (state.latest) {
    const now = state.latest;
    state.latest = null;
    try {
      const words = await answer(await request(now, {}));
      found();
      if (words.char) know(now, words);
      if (!state.latest) show(words);
      if (!state.latest && words.renewing) lookAgain(now);
    } catch {
      lost();
      if (!state.latest) show(lastKnown(now));
    }
  }
  state.asking = false;
}

onConnection(() => { if (connection.reached && state.newest && at("live")) live(state.newest); });

// A later look at the same question is dropped once another has been asked.
function lookAgain(url) {
  setTimeout(() => { if (state.newest === url && at("live")) live(url); }, LOOK_AGAIN);
}

function know(url, words) {
  const known = recall(KNOWN, []).filter(k => k.url !== url).slice(-MOST_KNOWN + 1);
  remember(KNOWN, [...known, { url, words, at: Date.now() }]);
}

function lastKnown(url) {
  const known = recall(KNOWN, []).find(k => k.url === url);
  if (!known) {
    return { state: "untried", word: "No connection, so the risk is not known",
      bounds: "Fire nothing whose risk you have not seen before." };
  }
  return { ...known.words, renewing: false, old: true, bounds: "No connection. As of " + time(known.at) + ": " + known.words.bounds };
}

function time(ms) {
  const d = new Date(ms), clock = d.toTimeString().slice(0, 5);
  return d.toDateString() === new Date().toDateString() ? clock : clock + " on " + d.toISOString().slice(0, 10);
}

function show(words) {
  const panel = at("live");
  if (!panel) return;
  if (panel.dataset.shown) inPlace(panel, () => tell(words)); else tell(words);
  panel.dispatchEvent(new CustomEvent("risk", { bubbles: true, detail: words }));
  panel.dataset.shown = String(Date.now());
}

// What was touched last stays under the finger: the words keep the room they had, and the page scrolls by as much
// as that control would move when they grow.
function inPlace(panel, change) {
  const top = () => touched?.isConnected ? touched.getBoundingClientRect().top : 0, before = top();
  panel.style.minHeight = panel.getBoundingClientRect().height + "px";
  change();
  scrollBy({ top: top() - before, behavior: "instant" });
}

function tell(words) {
  if (words.poison !== undefined && at("live-poison")) say("live-poison", words.poison);
  at("live").className = "state is-" + (words.state || "unknown") + (words.old ? " old" : "");
  say("live-word", words.word || words.sentence);
  say("live-note", words.note);
  say("live-bounds", words.bounds);
  say("live-spots", words.spots);
  say("live-does", words.does, true);
  say("live-rests", words.rests);
  at("live-events").hidden = !words.char;
  for (const [id, event] of [["live-char", words.char], ["live-clear", words.clear]]) {
    if (!event) continue;
    const row = at(id);
    row.className = event.kept ? "kept" : "broken";
    row.querySelector("b").textContent = event.about;
    row.querySelector("span").textContent = event.bound;
    row.querySelector("em").textContent = event.word;
  }
}

// Its room stays where nothing is said, if what lies below must not move.
function say(id, text, keepsRoom) {
  at(id).textContent = text || "";
  at(id).hidden = !text && !keepsRoom;
}

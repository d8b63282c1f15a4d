// The live risk: what a setting does, newest question first. While one is under way, only the latest waits.
import { answer, connection, request } from "./requests.js";

const LOOK_AGAIN = 700;
const state = { asking: false, latest: null, newest: null };
const at = id => document.getElementById(id);

export async function live(url) {
  state.latest = state.newest = url;
  if (state.asking) return;
  state.asking = true;
  while (state.latest) {
    const now = state.latest;
    state.latest = null;
    try {
      const words = await answer(await request(now, {}));
      if (!state.latest) show(words);
      if (!state.latest && words.renewing) lookAgain(now);
      connection.reached = true;
    } catch {
      connection.reached = false;
      show({ note: "No connection, so the risk of this setting cannot be shown. Fire nothing whose risk you have not seen before." });
    }
  }
  state.asking = false;
}

// A later look at the same question is dropped once another has been asked.
function lookAgain(url) {
  setTimeout(() => { if (state.newest === url) live(url); }, LOOK_AGAIN);
}

function show(words) {
  if (words.poison !== undefined) say("live-poison", words.poison);
  say("live-beyond", words.beyond);
  say("live-note", words.note || words.sentence);
  say("live-spots", words.spots);
  say("live-does", words.does);
  say("live-rests", words.rests);
  at("live-events").hidden = !words.char;
  at("live").classList.toggle("far", words.tried === false);
  for (const [id, event] of [["live-char", words.char], ["live-clear", words.clear]]) {
    if (!event) continue;
    const row = at(id);
    row.className = event.kept ? "kept" : "broken";
    row.querySelector("b").textContent = event.about;
    row.querySelector("span").textContent = event.bound;
    row.querySelector("em").textContent = event.word;
  }
  at("live").dataset.shown = String(Date.now());
}

function say(id, text) {
  at(id).textContent = text || "";
  at(id).hidden = !text;
}

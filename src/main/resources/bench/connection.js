// Whether the bench is reached. While it is not, it is asked for again and again, and whoever waits hears of it.
const AGAIN = 4000;
// The sentence with which the bench turned this device away, if it did.
export const connection = { reached: true, turnedAway: "" };
const state = { timer: 0, look: null };
const listeners = [];

// Calls a listener whenever the bench is lost or found again.
export function onConnection(listener) { listeners.push(listener); }

// How to ask for the bench; gives whether it answered.
export function askBy(look) { state.look = look; }

export function found() {
  clearTimeout(state.timer);
  if (connection.reached) return;
  connection.reached = true;
  listeners.forEach(listener => listener());
}

export function lost() {
  clearTimeout(state.timer);
  state.timer = setTimeout(again, AGAIN);
  if (!connection.reached) return;
  connection.reached = false;
  listeners.forEach(listener => listener());
}

async function again() {
  if (await state.look().catch(() => false)) found(); else lost();
}

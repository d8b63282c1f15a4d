// Sends what waits, one at a time and in order: a reading must not arrive before its patch.
import { forget, held } from "./photo-store.js";
import { announce, change, drop, queue } from "./queue.js";
import { answer, connection, renewToken, request } from "./requests.js";

const RETRY = 4000, RETRY_TURNED_AWAY = 20000;
const state = { underWay: null, timer: 0 };
const listeners = [];

// Calls a listener with each item that the bench took, doubted or refused, and with its reply.
export function onReply(listener) { listeners.push(listener); }

export function flush() {
  state.underWay = state.underWay || sendAll().finally(() => { state.underWay = null; announce(); });
  return state.underWay;
}

async function sendAll() {
  clearTimeout(state.timer);
  const behind = new Set();
  let item;
  while ((item = queue().find(i => i.state === "waiting" && !behind.has(i.id)))) {
    const blocked = queue().some(i => i.state !== "waiting" && i.id === item.body.of_patch);
    if (blocked) { behind.add(item.id); continue; }
    change(item.id, i => ({ ...i, tries: i.tries + 1 }));
    let reply;
    try {
      reply = await post(item);
      if (reply.status === 403 && await renewToken()) reply = await post(item);
      connection.reached = true;
    } catch { reply = { status: 0 }; }
    if (reply.status === 200) {
      if (item.path === "/photos") await forget(item.id);
      drop(item.id);
      listeners.forEach(listener => listener(item, reply));
    } else if (reply.status === 0 || reply.status >= 500 || reply.status === 429 || reply.status === 408) {
      connection.reached = false;
      state.timer = setTimeout(flush, RETRY);
      return;
    } else if (reply.status === 401 || reply.status === 403 || reply.status === 421) {
      connection.turnedAway = reply.sentence || "This device is no longer paired.";
      state.timer = setTimeout(flush, RETRY_TURNED_AWAY);
      return;
    } else {
      change(item.id, i => ({ ...i, state: reply.status === 409 ? "doubt" : "refused", sentence: reply.sentence }));
      listeners.forEach(listener => listener(item, reply));
    }
    connection.turnedAway = "";
  }
}

async function post(item) {
  if (item.path === "/photos") return postPhoto(item);
  return answer(await request(item.path, { method: "POST", body: JSON.stringify(item.body),
    headers: { "Content-Type": "application/json" } }));
}

async function postPhoto(item) {
  const file = await held(item.id);
  if (!file) return { status: 410, sentence: "The photo is no longer on this device." };
  const query = new URLSearchParams({ id: item.id, patch: item.body.of_patch, by: item.body.by || "" });
  return answer(await request("/photos?" + query, { method: "POST", body: file, long: true,
    headers: { "Content-Type": file.type || "application/octet-stream" } }));
}

// Sends what waits. Entries go one at a time and in order, as a reading must not arrive before its patch; photos go
// beside them in a line of their own, so that a large one on a slow network holds back other photos alone.
import { connection, found, lost, onConnection } from "./connection.js";
import { forget, held } from "./photo-store.js";
import { announce, change, drop, queue } from "./queue.js";
import { answer, renewToken, request } from "./requests.js";

const RETRY = 4000, RETRY_TURNED_AWAY = 20000, PHOTO_PATIENCE = 60000, SLOWEST = 10; // ms and bytes a ms
const isPhoto = item => item.path === "/photos";
const lines = [{ of: item => !isPhoto(item) }, { of: isPhoto }].map(line => ({ ...line, underWay: null, timer: 0 }));
const listeners = [];

// Calls a listener with each item that the bench took, doubted or refused, and with its reply.
export function onReply(listener) { listeners.push(listener); }

export function flush() { return Promise.all(lines.map(send)); }

onConnection(() => { if (connection.reached) flush(); });

function send(line) {
  line.underWay = line.underWay || sendAll(line).finally(() => { line.underWay = null; announce(); });
  return line.underWay;
}

const later = (line, pause) => { line.timer = setTimeout(() => send(line), pause); };

async function sendAll(line) {
  clearTimeout(line.timer);
  const behind = new Set();
  // A photo waits for its patch, a reading for the patch that is doubted, refused or failing.
  const free = i => !behind.has(i.id) && !queue().some(other => other.id === i.body.of_patch && other.id !== i.id && (isPhoto(i) || other.state !== "waiting" || behind.has(other.id)));
  let item;
  while ((item = queue().find(i => line.of(i) && i.state === "waiting" && free(i)))) {
    change(item.id, i => ({ ...i, tries: i.tries + 1 }));
    let reply;
    try {
      reply = await post(item);
      if (reply.status === 403 && await renewToken()) reply = await post(item);
    } catch { reply = { status: 0 }; }
    if (reply.status === 0 || reply.status === 429 || reply.status === 408) {
      if (reply.status === 0 && !isPhoto(item)) lost();
      later(line, RETRY);
      return;
    }
    found();
    if (reply.status === 200) {
      if (isPhoto(item)) await forget(item.id);
      drop(item.id);
      listeners.forEach(listener => listener(item, reply));
      if (!isPhoto(item)) send(lines[1]);
    } else if (reply.status >= 500) {
      behind.add(item.id); // what does not hang on it goes on
      later(line, RETRY);
    } else if (reply.status === 401 || reply.status === 403 || reply.status === 421) {
      connection.turnedAway = reply.sentence || "This device is no longer paired.";
      later(line, RETRY_TURNED_AWAY);
      return;
    } else {
      change(item.id, i => ({ ...i, state: reply.status === 409 ? "doubt" : "refused", sentence: reply.sentence }));
      listeners.forEach(listener => listener(item, reply));
    }
    connection.turnedAway = "";
  }
}

async function post(item) {
  if (isPhoto(item)) return postPhoto(item);
  return answer(await request(item.path, { method: "POST", body: JSON.stringify(item.body),
    headers: { "Content-Type": "application/json" } }));
}

async function postPhoto(item) {
  const file = await held(item.id);
  if (!file) return { status: 410, sentence: "The photo is no longer on this device." };
  const query = new URLSearchParams({ id: item.id, patch: item.body.of_patch, by: item.body.by || "" });
  return answer(await request("/photos?" + query, { method: "POST", body: file, patience: PHOTO_PATIENCE + file.size / SLOWEST,
    headers: { "Content-Type": file.type || "application/octet-stream" } }));
}

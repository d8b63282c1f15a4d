// The words in the head of every page: what waits on this device, and whether the bench is reached.
import { queue } from "./queue.js";
import { connection } from "./requests.js";

const link = document.getElementById("link");

export function showLink() {
  const waiting = queue();
  link.textContent = "";
  if (waiting.length) link.append(toWhatWaits(waiting));
  else if (!connection.reached) link.textContent = "No connection: entries will wait here";
}

function toWhatWaits(waiting) {
  const asks = waiting.filter(i => i.state !== "waiting").length, count = asks || waiting.length, one = count === 1;
  const a = document.createElement("a");
  a.href = connection.turnedAway ? "/pair" : "/record#queue";
  a.textContent = count + (one ? " entry" : " entries") + (asks ? one ? " needs you" : " need you"
    : connection.turnedAway ? one ? " waits: pair again" : " wait: pair again" : " waiting");
  return a;
}

// The words in the corner of every page: what waits on this device, and whether the bench is reached.
import { connection } from "./connection.js";
import { queue } from "./queue.js";

const link = document.getElementById("link");

export function showLink() {
  const waiting = queue();
  const wanted = waiting.length ? toWhatWaits(waiting) : connection.reached ? null : inWords("No connection: entries wait here");
  if (link.firstChild?.outerHTML !== wanted?.outerHTML) link.replaceChildren(...wanted ? [wanted] : []);
}

function inWords(text) {
  const span = document.createElement("span");
  span.textContent = text;
  return span;
}

function toWhatWaits(waiting) {
  const asks = waiting.filter(i => i.state !== "waiting").length, count = asks || waiting.length, one = count === 1;
  const a = document.createElement("a");
  a.href = connection.turnedAway ? "/pair" : "/record#queue";
  a.textContent = count + (one ? " entry" : " entries") + (asks ? one ? " needs you" : " need you"
    : connection.turnedAway ? one ? " waits: pair again" : " wait: pair again" : connection.reached ? " waiting" : " waiting, no connection");
  return a;
}

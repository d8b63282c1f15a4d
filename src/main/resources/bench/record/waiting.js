// The list of what waits on this device, with what a person can do about each.
import { forget } from "../photo-store.js";
import { change, drop, queue } from "../queue.js";
import { flush } from "../sending.js";
import { correct, next } from "./begin.js";
import { at, there } from "./elements.js";
import { entry } from "./entry.js";
import { showState } from "./kept.js";
import { tapeChanged, tapes } from "./tapes.js";

export function showWaiting() {
  if (!there()) return;
  showState();
  // While an entry is on its way for the first time, there is nothing to tell yet.
  const unsent = queue().filter(i => !(entry.pending && i.id === entry.pending.id)), reminders = tapes();
  at("queue").hidden = unsent.length + reminders.length === 0;
  at("queue-list").replaceChildren(...reminders.map(reminderLine), ...unsent.map(itemLine),
    ...unsent.some(i => i.state === "waiting") ? [line(button("Send now", flush))] : []);
}

function reminderLine({ tape, code }) {
  return line(`The log has ${code}, but its tape says ${tape}. Change the tape. `,
    button("Tape changed", () => { tapeChanged(tape); showWaiting(); }));
}

function itemLine(item) {
  const waits = item.state === "waiting", parts = [item.words + ". " + (waits ? "Waiting. " : item.sentence + " ")];
  if (beingCorrected(item.id)) parts.push(button("Correct it later", next), " ");
  else if (!waits && item.body.outcome) parts.push(button("Correct it", () => correct(item)), " ");
  if (item.state === "doubt") parts.push(button("I am sure: keep it", () => again(item, { sure: true })), " ", discard(item.id));
  else if (item.state === "refused") parts.push(button("Try again", () => again(item, {})), " ", discard(item.id));
  return line(...parts);
}

const beingCorrected = id => entry.correcting && entry.correcting.id === id;

function again(item, more) {
  change(item.id, i => ({ ...i, state: "waiting", body: { ...i.body, ...more } }));
  flush();
}

function discard(id) {
  return button("Discard", b => {
    if (b.dataset.asked) {
      drop(id);
      forget(id);
      if (beingCorrected(id)) next();
    } else { b.dataset.asked = "1"; b.textContent = "Tap again to discard"; }
  });
}

function line(...parts) {
  const li = document.createElement("li");
  li.append(...parts);
  return li;
}

function button(text, work) {
  const b = document.createElement("button");
  b.type = "button";
  b.textContent = text;
  b.addEventListener("click", () => work(b));
  return b;
}

// The place of this device: rig, board, finish, figure and knobs as it left them. Other devices have their own.
import { recall, remember } from "../storage.js";
import { all, form } from "./elements.js";

const PLACE = "bench.place";
// What belongs to one patch alone.
const OF_THE_PATCH = ["outcome", "passes", "soot", "note", "depth", "by", "strokes", "stroke-length"];
const CHOSEN = ["rig", "board", "finish"];

export const ownPlace = () => recall(PLACE, null);

export function rememberPlace(values) {
  remember(PLACE, Object.fromEntries(Object.entries(values).filter(([name]) => !OF_THE_PATCH.includes(name))));
}

// What of it is not in the log any more, in words.
export function gone(values) {
  return CHOSEN.filter(name => values[name] && !all("option", form[name]).some(o => o.value === values[name]))
    .map(name => name + " " + values[name]);
}

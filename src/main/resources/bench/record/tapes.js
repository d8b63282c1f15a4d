// Tapes that bear a code of this device's own, while the log gave their patch another one.
import { recall, remember } from "../storage.js";

const TAPES = "bench.tapes";

export const tapes = () => recall(TAPES, []);
export function remind(tape, code) { remember(TAPES, [...tapes(), { tape, code }]); }
export function tapeChanged(tape) { remember(TAPES, tapes().filter(t => t.tape !== tape)); }

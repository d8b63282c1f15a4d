// A sound and a shake when an entry is kept, for a person in goggles; this device remembers whether they are wanted.
import { recall, remember } from "../storage.js";
import { at } from "./elements.js";

const SIGNAL = "bench.signal", HIGH = 880, LOW = 220, LONG = 0.18; // Hz, s

export function offerSignal() {
  at("signal").checked = recall(SIGNAL, false);
  at("signal").addEventListener("change", () => { remember(SIGNAL, at("signal").checked || null); if (at("signal").checked) signal(true); });
}

// High for what is kept, low for what needs the person.
export function signal(kept) {
  if (!recall(SIGNAL, false)) return;
  navigator.vibrate?.(kept ? 120 : [80, 60, 80]);
  try {
    const sound = new AudioContext(), tone = sound.createOscillator(), loudness = sound.createGain();
    tone.frequency.value = kept ? HIGH : LOW;
    loudness.gain.setValueAtTime(0.3, sound.currentTime);
    loudness.gain.linearRampToValueAtTime(0, sound.currentTime + LONG);
    tone.connect(loudness).connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + LONG);
    tone.onended = () => sound.close();
  } catch { /* a device without sound */ }
}

// Entries wait on this device until the bench has taken them: texts here, photos in the store of photos.
// An item is { id, path, body, words, state: "waiting", "doubt" or "refused", sentence, tries, of }.
import { uuid7 } from "./identity.js";
import { hold } from "./photo-store.js";
import { recall, remember } from "./storage.js";

const NAME = "bench.queue";
const listeners = [];

export const queue = () => recall(NAME, []);

// Calls a listener whenever what waits has changed.
export function onChange(listener) { listeners.push(listener); }
export function announce() { listeners.forEach(listener => listener()); }

export function add(path, body, words, more) {
  remember(NAME, [...queue(), { id: body.id, path, body, words, ...more, state: "waiting", tries: 0 }]);
  announce();
}

export async function addPhoto(patch, code, file, by) {
  const id = uuid7();
  await hold(id, file);
  add("/photos", { id, of_patch: patch, by }, "Photo of " + code);
}

// Replaces an item by what is made of it.
export function change(id, how) {
  remember(NAME, queue().map(item => item.id === id ? how(item) : item));
  announce();
}

export function drop(id) {
  remember(NAME, queue().filter(item => item.id !== id));
  announce();
}

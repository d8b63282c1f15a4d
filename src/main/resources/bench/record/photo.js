// The photo of this entry. While the form is a draft it lies in the store of photos, too large to wait with
// the draft: the latest of this device.
import { uuid7 } from "../identity.js";
import { forget, held, hold } from "../photo-store.js";
import { at } from "./elements.js";

const DRAFT = "bench.draft";
export const photo = { id: null }; // of the photo chosen; null for none

export const photoFile = () => at("photo").files[0];

// Gives whether the photo is still the one chosen, once it lies in the store or cannot.
export async function choosePhoto() {
  const file = photoFile(), id = photo.id = file ? uuid7() : null;
  if (file) await hold(DRAFT, { id, file }).catch(() => {});
  if (photo.id !== id) return false;
  show();
  return true;
}

export function clearPhoto() {
  at("photo").value = "";
  photo.id = null;
  show();
}

export function restorePhoto(id) {
  photo.id = id;
  if (id) held(DRAFT).then(draft => { if (draft && draft.id === photo.id) put(draft.file); }).catch(() => {});
}

// The draft's photo has gone its own way.
export function dropPhoto(id) { held(DRAFT).then(draft => draft && draft.id === id && forget(DRAFT)).catch(() => {}); }

function put(file) {
  const files = new DataTransfer();
  files.items.add(file);
  at("photo").files = files.files;
  show();
}

function show() { at("photo-words").textContent = photo.id ? "It is kept with the patch, with its checksum." : ""; }

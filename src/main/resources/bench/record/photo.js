// The photo of this entry. While the form is a draft it lies in the store of photos, too large to wait with
// the draft.
import { uuid7 } from "../identity.js";
import { forget, held, hold } from "../photo-store.js";
import { shrunk } from "../shrink.js";
import { at, there } from "./elements.js";

export const photo = { id: null, file: null }; // the photo chosen, as it is sent; null for none

// Gives whether the photo is still the one chosen, once it lies in the store or cannot.
export async function choosePhoto() {
  const chosen = at("photo").files[0], id = chosen ? uuid7() : null, before = photo.id;
  Object.assign(photo, { id, file: chosen || null });
  if (before) forget(before);
  if (chosen) {
    const file = await shrunk(chosen);
    if (photo.id === id) photo.file = file;
    await hold(id, file).catch(() => {});
  }
  if (photo.id !== id) return false;
  show();
  return true;
}

export function clearPhoto() {
  at("photo").value = "";
  Object.assign(photo, { id: null, file: null });
  show();
}

export function restorePhoto(id) {
  Object.assign(photo, { id, file: null });
  if (id) held(id).then(file => { if (file && photo.id === id) { photo.file = file; show(); } }).catch(() => {});
}

// The draft's photo has gone its own way.
export function dropPhoto(id) { if (id) forget(id); }

function show() {
  if (!there()) return;
  const picture = at("photo-shown");
  if (picture.src) URL.revokeObjectURL(picture.src);
  picture.hidden = !photo.file;
  if (photo.file) picture.src = URL.createObjectURL(photo.file); else picture.removeAttribute("src");
  at("photo-words").textContent = photo.file ? "It is kept with the patch, with its checksum." : "";
  at("photo-do").textContent = photo.file ? "Take another photo" : "Take a photo";
}

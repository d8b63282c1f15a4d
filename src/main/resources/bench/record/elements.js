// The elements of the Record page.
export const form = document.getElementById("record");
export const at = id => document.getElementById(id);
export const all = (what, within = document) => [...within.querySelectorAll(what)];

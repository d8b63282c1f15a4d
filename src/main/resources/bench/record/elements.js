// The elements of the Record page. Its form is another one each time the page is shown.
export let form = null;
export const at = id => document.getElementById(id);
export const all = (what, within = document) => [...within.querySelectorAll(what)];
export function beginWith(shown) { form = shown; }
// Whether the page is shown now: what waits is sent from other pages too.
export const there = () => !!form && form.isConnected;

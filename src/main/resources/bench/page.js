// What a script does for a page each time the page is shown, whether the browser loaded it or it was fetched into this one.
const starts = [];
export const page = { fetched: false }; // whether the page now shown was fetched into this one

// Calls start with the element of an identity, at once and each time that a page with it is shown.
export function whenShown(id, start) {
  starts.push({ id, start });
  run({ id, start });
}

export function shown() { [...starts].forEach(run); }

function run({ id, start }) {
  const element = document.getElementById(id);
  if (element) start(element);
}

// A long list to choose from gets a field below it: any part of a name, and what fits is there to tap. The list itself
// changes by nothing else.
import { whenShown } from "./page.js";

const LONG = 12, SHOWN = 8;
const state = { made: 0 };

whenShown("main", main => {
  for (const select of main.querySelectorAll("select:not([data-found])")) if (select.options.length > LONG && select.labels.length) offer(select);
});

function element(tag, values) { return Object.assign(document.createElement(tag), values); }

function offer(select) {
  const label = select.labels[0], name = label.firstChild.textContent.trim();
  const box = element("div", { className: "chooser" }), said = element("p", { className: "small", id: "fits-" + ++state.made });
  const field = element("input", { type: "search", placeholder: "Part of the name", autocomplete: "off", enterKeyHint: "search" });
  const list = element("ul", { className: "fits", hidden: true });
  select.dataset.found = "yes";
  field.setAttribute("aria-label", "Find in the list: " + name);
  field.setAttribute("aria-describedby", said.id);
  said.setAttribute("role", "status");
  label.before(box);
  box.append(label, field, said, list);

  function show() {
    const parts = field.value.toLowerCase().split(/\s+/).filter(Boolean);
    const fit = parts.length ? [...select.options].filter(o => o.value && parts.every(p => o.textContent.toLowerCase().includes(p))) : [];
    list.replaceChildren(...fit.slice(0, SHOWN).map(button));
    list.hidden = !fit.length;
    said.textContent = !parts.length ? "" : !fit.length ? "None of " + select.options.length + " fits." : fit.length > SHOWN
      ? fit.length + " fit; the first " + SHOWN + " are shown." : "";
    return fit;
  }

  function button(option) {
    const row = element("li", {}), tap = element("button", { type: "button", textContent: option.textContent.trim() });
    tap.addEventListener("click", () => take(option));
    row.append(tap);
    return row;
  }

  function take(option) {
    select.value = option.value;
    field.value = "";
    show();
    select.focus({ preventScroll: true });
    select.dispatchEvent(new Event("change", { bubbles: true }));
  }

  field.addEventListener("input", e => { e.stopPropagation(); show(); });
  field.addEventListener("change", e => e.stopPropagation());
  field.addEventListener("keydown", e => {
    if (e.key === "Escape") { field.value = ""; show(); }
    if (e.key !== "Enter") return;
    e.preventDefault();
    e.stopPropagation();
    const fit = show();
    if (fit.length === 1) take(fit[0]);
  });
}

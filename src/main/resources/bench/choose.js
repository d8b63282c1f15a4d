// A long list to choose from gets a field above it that narrows it by any part of a name.
import { whenShown } from "./page.js";

const LONG = 12;

whenShown("main", main => {
  for (const select of main.querySelectorAll("select[data-choose]:not([data-narrowed])")) if (select.options.length > LONG) narrow(select);
});

function narrow(select) {
  const all = [...select.options], field = document.createElement("input"), said = document.createElement("span");
  select.dataset.narrowed = "yes";
  Object.assign(field, { type: "search", placeholder: "part of the name", autocomplete: "off", className: "narrows" });
  field.setAttribute("aria-label", "Narrow the list: " + (select.labels[0]?.firstChild?.textContent || "").trim());
  said.className = "unseen";
  said.setAttribute("role", "status");
  select.before(field, said);
  field.addEventListener("input", () => {
    const parts = field.value.toLowerCase().split(/\s+/).filter(Boolean), chosen = select.value;
    const fit = all.filter(o => parts.every(p => o.textContent.toLowerCase().includes(p)));
    select.replaceChildren(...(fit.length ? fit : all));
    said.textContent = fit.length ? fit.length + " of " + all.length + " fit" : "None fits; all are shown";
    select.value = fit.some(o => o.value === chosen) ? chosen : select.options[0].value;
    if (select.value !== chosen) select.dispatchEvent(new Event("change", { bubbles: true }));
  });
  field.addEventListener("keydown", e => { if (e.key === "Enter") { e.preventDefault(); select.focus(); } });
}

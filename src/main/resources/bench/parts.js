// Parts of a page that take longer than the page: each comes into its place, and again while a newer one is worked out.
import { whenShown } from "./page.js";
import { request } from "./requests.js";

whenShown("main", main => main.querySelectorAll("[data-part]").forEach(fetchPart));

async function fetchPart(place) {
  try {
    const response = await request(place.dataset.part, { headers: { Accept: "text/html" }, patience: 30000 });
    if (!response.ok || !place.isConnected) return;
    const part = new DOMParser().parseFromString(await response.text(), "text/html").body;
    const again = part.querySelector("[data-again]")?.dataset.again;
    place.replaceChildren(...[...part.childNodes].map(node => document.importNode(node, true)));
    if (again) setTimeout(() => { if (place.isConnected) fetchPart(place); }, Number(again));
  } catch { /* without the bench the page says what it said before */ }
}

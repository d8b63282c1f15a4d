// The page stays loaded and fetches its parts, so that losing the bench never leaves the hand of the person: a link
// or a form that cannot be had says so in place, and what was seen before is shown with its time.
import { connection, found, lost, onConnection } from "./connection.js";
import { page, shown } from "./page.js";
import { takeToken } from "./requests.js";
import { visited, visit } from "./visited.js";

const PATIENCE = 45000, PATIENCE_WITH_COPY = 6000, READY = ["/record"];
const state = { stop: null, missed: "", at: whole(location) };

function whole(address) { return address.pathname + address.search; }

// What the browser loaded is kept as it came, before any script changes it.
visit(whole(location), document.documentElement.outerHTML);
// Record with settings of a link serves as Record alone too: the device has its own place. A reading does not.
if (READY.includes(location.pathname) && !location.search.includes("reading=")) visit(location.pathname, document.documentElement.outerHTML);

export function listen() {
  document.addEventListener("click", e => {
    const a = e.target.closest?.("a[href]");
    if (!a || e.defaultPrevented || e.button || e.metaKey || e.ctrlKey || e.shiftKey || e.altKey) return;
    if (a.target || a.hasAttribute("download") || "plain" in a.dataset || a.origin !== location.origin) return;
    const to = new URL(a.href);
    if (whole(to) === state.at && to.hash) return;
    e.preventDefault();
    go(to, { sign: a });
  });
  document.addEventListener("submit", e => {
    const form = e.target;
    if (e.defaultPrevented || form.target || "plain" in form.dataset || form.enctype === "multipart/form-data") return;
    e.preventDefault();
    const fields = new URLSearchParams(new FormData(form, e.submitter)), to = new URL(e.submitter?.getAttribute("formaction") || form.action, location.href);
    if (form.method === "post") { go(to, { sign: e.submitter, body: fields }); return; }
    to.search = fields;
    go(to, { sign: e.submitter });
  });
  addEventListener("popstate", () => { if (whole(location) !== state.at) go(new URL(location.href), { back: true }); });
  onConnection(() => { if (connection.reached && state.missed) go(new URL(state.missed, location.href), { back: true }); });
  const idle = window.requestIdleCallback || (work => setTimeout(work, 300));
  idle(() => READY.forEach(ready));
}

// A page that is wanted without the bench too is fetched before it is, with its styles and scripts.
async function ready(path) {
  if (visited(path) || !document.querySelector("nav.bar")) return;
  try {
    const response = await fetch(path, { headers: { Accept: "text/html" }, credentials: "same-origin" });
    if (!response.ok) return;
    const html = await response.text();
    visit(path, html);
    await load(parsed(html));
  } catch { /* without the bench there is nothing to get ready */ }
}

async function go(to, { sign, body, back }) {
  state.stop?.abort();
  const stop = state.stop = new AbortController(), path = whole(to), copy = !body && visited(path);
  const late = setTimeout(() => stop.abort("late"), copy ? PATIENCE_WITH_COPY : PATIENCE);
  busy(sign, true);
  let got;
  try {
    const response = await fetch(to, { method: body ? "POST" : "GET", body, headers: { Accept: "text/html" },
      credentials: "same-origin", signal: stop.signal });
    found();
    if (!/^text\/html/.test(response.headers.get("Content-Type") || "")) { location.assign(to); return; }
    got = { html: await response.text(), address: response.redirected ? new URL(response.url) : to, kept: response.ok && !body };
  } catch {
    if (stop.signal.aborted && stop.signal.reason !== "late") return; // another was asked for meanwhile
    lost();
  } finally { clearTimeout(late); busy(sign, false); }
  if (got) {
    const doc = parsed(got.html);
    if (!doc.getElementById("main")) { location.assign(to); return; }
    if (got.kept) visit(whole(got.address), got.html);
    if (!got.address.hash) got.address.hash = to.hash;
    state.missed = "";
    await show(doc, got.address, back);
  } else if (body) notSent(sign);
  else if (copy) {
    state.missed = READY.includes(to.pathname) ? "" : to.href;
    await show(parsed(copy.html), to, back, copy.at);
  } else { state.missed = to.href; await show(notHad(to), to, back); }
}

const parsed = html => new DOMParser().parseFromString(html, "text/html");

// Sign within a tenth of a second that a tap was heard.
function busy(sign, on) {
  document.documentElement.classList.toggle("asking", on);
  if (sign?.isConnected) { if (on) sign.setAttribute("aria-busy", "true"); else sign.removeAttribute("aria-busy"); }
}

async function show(doc, to, back, asOf) {
  dispatchEvent(new Event("leaving"));
  await styles(doc);
  page.fetched = true;
  if (!back && to.href !== location.href) history.pushState(null, "", to);
  else if (back && to.href !== location.href) history.replaceState(null, "", to);
  state.at = whole(to);
  document.title = doc.title || document.title;
  takeToken(doc.querySelector("meta[name=bench-token]")?.content);
  const main = document.importNode(doc.getElementById("main"), true);
  document.getElementById("main").replaceWith(main);
  tabs(doc);
  if (asOf && to.pathname !== "/record") main.prepend(sentence("No connection. This is what the page said at " + new Date(asOf).toTimeString().slice(0, 5) + "; it is renewed when the bench is reached."));
  const target = to.hash && document.getElementById(decodeURIComponent(to.hash.slice(1)));
  if (target) target.scrollIntoView(); else if (!back) scrollTo(0, 0);
  main.focus({ preventScroll: true });
  shown();
  await scripts(doc);
}

function tabs(doc) {
  const now = document.querySelector("nav.bar"), then = doc.querySelector("nav.bar");
  if (!doc.body.dataset.partial) { if (now && then) now.replaceWith(document.importNode(then, true)); else if (then) document.body.append(document.importNode(then, true)); else now?.remove(); }
}

const load = async doc => { await styles(doc); await scripts(doc); };

function styles(doc) {
  const missing = [...doc.querySelectorAll("link[rel=stylesheet]")].map(l => l.getAttribute("href"))
    .filter(href => !document.querySelector(`link[rel=stylesheet][href="${href}"]`));
  return Promise.all(missing.map(href => new Promise(done => {
    const link = document.createElement("link");
    Object.assign(link, { rel: "stylesheet", href, onload: done, onerror: done });
    link.setAttribute("href", href);
    document.head.append(link);
  })));
}

function scripts(doc) {
  return Promise.all([...doc.querySelectorAll("head script[src]")].map(s => import(s.getAttribute("src")).catch(() => {})));
}

function sentence(text) {
  const p = document.createElement("p");
  p.className = "trouble";
  p.setAttribute("role", "alert");
  p.textContent = text;
  return p;
}

// What was typed stays in the form.
function notSent(sign) {
  const form = sign?.form || document.querySelector("form"), before = form.querySelector(".not-sent");
  before?.remove();
  const words = sentence("No connection, so nothing was sent. What you typed is still here; send it again when the bench is reached.");
  words.classList.add("not-sent");
  (sign || form.lastElementChild).before(words);
  words.scrollIntoView({ block: "nearest" });
}

function notHad(to) {
  const doc = document.implementation.createHTMLDocument("No connection");
  doc.body.dataset.partial = "yes";
  const main = doc.createElement("main"), h1 = doc.createElement("h1"), back = doc.createElement("a"), p = doc.createElement("p");
  Object.assign(main, { id: "main", tabIndex: -1 });
  h1.textContent = "Not here yet";
  Object.assign(back, { href: "/record", className: "button main", textContent: "Record" });
  p.append(back);
  main.append(h1, sentence("No connection, and this page was not opened before. It comes by itself when the bench is reached; you can record meanwhile."), p);
  doc.body.append(main);
  return doc;
}

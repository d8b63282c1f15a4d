"use strict";
// Entries wait on this device until the bench has taken them. Each has an identity of its own, so
// that sending it twice records it once. Texts of entries lie in localStorage, photos in IndexedDB.
const Bench = (() => {
  const QUEUE = "bench.queue", RETRY = 4000, PATIENCE = 8000;
  const listeners = [];
  let token = document.querySelector("meta[name=bench-token]").content;
  let sending = null, timer = 0, reached = true, turnedAway = "";

  function uuid7() {
    const b = crypto.getRandomValues(new Uint8Array(16));
    let t = Date.now();
    for (let i = 5; i >= 0; i--) { b[i] = t % 256; t = Math.floor(t / 256); }
    b[6] = 0x70 | (b[6] & 15);
    b[8] = 0x80 | (b[8] & 63);
    const hex = [...b].map(x => x.toString(16).padStart(2, "0")).join("");
    return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
  }

  function now() {
    const d = new Date(), o = -d.getTimezoneOffset(), two = n => String(Math.floor(Math.abs(n))).padStart(2, "0");
    const local = new Date(d.getTime() + o * 60000).toISOString().slice(0, 19);
    return local + (o < 0 ? "-" : "+") + two(o / 60) + ":" + two(o % 60);
  }

  function kept(name, fallback) {
    try { return JSON.parse(localStorage.getItem(name)) ?? fallback; } catch { return fallback; }
  }
  function keep(name, value) {
    if (value === null) localStorage.removeItem(name); else localStorage.setItem(name, JSON.stringify(value));
  }
  const queue = () => kept(QUEUE, []);
  function change(id, how) {
    keep(QUEUE, queue().flatMap(item => item.id === id ? how(item) : [item]));
    tell();
  }

  // Photos, by the identity of their entry.
  function store(mode, work) {
    return new Promise((done, failed) => {
      const open = indexedDB.open("bench-photos", 1);
      open.onupgradeneeded = () => open.result.createObjectStore("photos");
      open.onerror = () => failed(open.error);
      open.onsuccess = () => {
        const request = work(open.result.transaction("photos", mode).objectStore("photos"));
        request.onsuccess = () => { open.result.close(); done(request.result); };
        request.onerror = () => { open.result.close(); failed(request.error); };
      };
    });
  }

  function add(path, body, words, more) {
    const item = { id: body.id, path, body, words, ...more, state: "waiting", tries: 0 };
    keep(QUEUE, [...queue(), item]);
    tell();
    return item.id;
  }
  async function addPhoto(patch, code, file, by) {
    const id = uuid7();
    await store("readwrite", s => s.put(file, id));
    add("/photos", { id, of_patch: patch, by }, "Photo of " + code);
    return id;
  }

  async function request(path, options) {
    const stop = new AbortController();
    const late = setTimeout(() => stop.abort(), options.long ? 60000 : PATIENCE);
    try {
      return await fetch(path, { ...options, signal: stop.signal, credentials: "same-origin",
        headers: { Accept: "application/json", "X-Bench-Token": token, ...options.headers } });
    } finally { clearTimeout(late); }
  }

  async function post(item) {
    if (item.path === "/photos") {
      const file = await store("readonly", s => s.get(item.id));
      if (!file) return { status: 410, sentence: "The photo is no longer on this device." };
      const q = new URLSearchParams({ id: item.id, patch: item.body.of_patch, by: item.body.by || "" });
      return answer(await request("/photos?" + q, { method: "POST", body: file, long: true,
        headers: { "Content-Type": file.type || "application/octet-stream" } }));
    }
    return answer(await request(item.path, { method: "POST", body: JSON.stringify(item.body),
      headers: { "Content-Type": "application/json" } }));
  }
  async function answer(response) {
    let words = {};
    try { words = await response.json(); } catch { /* an answer without words */ }
    return { status: response.status, ...words };
  }

  async function renewToken() {
    const response = await request("/pulse", {});
    if (response.ok) { token = (await response.json()).token; return true; }
    return false;
  }

  // One at a time and in order: a reading must not arrive before its patch.
  function flush() {
    sending = sending || work().finally(() => { sending = null; tell(); });
    return sending;
  }
  async function work() {
    clearTimeout(timer);
    const held = new Set();
    let item;
    while ((item = queue().find(i => i.state === "waiting" && !held.has(i.id)))) {
      const blocked = queue().some(i => i.state !== "waiting" && i.id === item.body.of_patch);
      if (blocked) { held.add(item.id); continue; }
      change(item.id, i => [{ ...i, tries: i.tries + 1 }]);
      let reply;
      try {
        reply = await post(item);
        if (reply.status === 403 && await renewToken()) reply = await post(item);
        reached = true;
      } catch { reply = { status: 0 }; }
      if (reply.status === 200) {
        if (item.path === "/photos") await store("readwrite", s => s.delete(item.id)).catch(() => {});
        change(item.id, () => []);
        listeners.forEach(l => l(item, reply));
      } else if (reply.status === 0 || reply.status >= 500 || reply.status === 429 || reply.status === 408) {
        reached = false;
        timer = setTimeout(flush, RETRY);
        return;
      } else if (reply.status === 401 || reply.status === 403 || reply.status === 421) {
        turnedAway = reply.sentence || "This device is not let in any more.";
        timer = setTimeout(flush, RETRY * 5);
        return;
      } else {
        change(item.id, i => [{ ...i, state: reply.status === 409 ? "doubt" : "refused", sentence: reply.sentence }]);
        listeners.forEach(l => l(item, reply));
      }
      turnedAway = "";
    }
  }

  function tell() {
    const waiting = queue(), link = document.getElementById("link");
    link.textContent = "";
    if (waiting.length) {
      const a = document.createElement("a");
      const asks = waiting.filter(i => i.state !== "waiting").length, told = asks || waiting.length, one = told === 1;
      a.href = "/record#queue";
      a.textContent = told + (one ? " entry" : " entries") + (asks ? one ? " needs you" : " need you"
        : turnedAway ? one ? " waits: pair again" : " wait: pair again" : " waiting");
      if (turnedAway) a.href = "/pair";
      link.append(a);
    } else if (!reached) {
      link.textContent = "No connection: entries will wait here";
    }
    document.dispatchEvent(new CustomEvent("bench-queue"));
  }

  // A number as the bench reads it: a decimal comma is a point, and a unit may follow. NaN for what it
  // refuses: no number, or a comma that could stand between thousands.
  const NUMBER = /^([-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[-+]?\d+)?)\s*([^\s\d.,]\S*|)$/i;
  const THOUSANDS = /^[-+]?[1-9]\d{0,2}(?:,\d{3})+(?!\d|,\d)/;
  const thousands = text => THOUSANDS.test(text.trim());
  function number(text) {
    const parts = thousands(text) ? null : NUMBER.exec(text.trim());
    const value = parts ? Number(parts[1].replace(",", ".")) : NaN;
    return { value: Number.isFinite(value) ? value : NaN, unit: parts ? parts[2].replace("²", "2") : "" };
  }

  // Step buttons of every page. What is not read for sure stays as it was typed.
  function step(button) {
    const input = document.getElementById(button.dataset.for), knob = input.closest(".knob");
    const own = knob.querySelector("[data-unit]")?.textContent ?? "", typed = input.value.trim();
    const by = Number(button.dataset.step), decimals = (button.dataset.step.split(".")[1] || "").length;
    const have = typed ? number(typed) : { value: 0, unit: "" };
    const other = have.unit && have.unit.toLowerCase() !== own.replace("²", "2").toLowerCase();
    const fraction = own === "%" && !have.unit && have.value > 0 && have.value <= 1;
    knob.querySelector(".unread")?.remove();
    if (Number.isNaN(have.value) || other || fraction || input.validity.patternMismatch) {
      const words = document.createElement("p");
      words.className = "unread";
      words.setAttribute("role", "alert");
      words.textContent = fraction ? `The buttons do not step a bare ${typed}, which could be a fraction; write the number in % above 1, or with its % sign.`
        : own ? `The buttons step a number in ${own} without commas between thousands, not "${typed}"; write it so.`
        : `The buttons step a whole number, not "${typed}"; write one.`;
      knob.append(words);
      return;
    }
    const places = Math.max(decimals, (String(have.value).split(".")[1] || "").length);
    const next = Number((have.value + by).toFixed(Math.min(places, 4)));
    // A 1 that the buttons made is no fraction.
    const sign = own === "%" && next <= 1 ? "%" : "";
    if (next > 0) { input.value = next + sign; input.dispatchEvent(new Event("input", { bubbles: true })); }
  }
  document.addEventListener("input", e => e.target.closest(".knob")?.querySelector(".unread")?.remove());
  document.addEventListener("click", e => {
    const button = e.target.closest("button[data-step]");
    if (button) step(button);
  });

  // What a setting does, newest question first: while one is under way, only the latest waits.
  // A later look at the same question is dropped once another has been asked.
  let asking = false, latest = null, newest = null;
  async function live(url) {
    latest = newest = url;
    if (asking) return;
    asking = true;
    while (latest) {
      const now = latest;
      latest = null;
      try {
        const words = await answer(await request(now, {}));
        if (!latest) show(words);
        if (!latest && words.renewing) setTimeout(() => { if (newest === now) live(now); }, 700);
        reached = true;
      } catch {
        reached = false;
        show({ note: "No connection, so the risk of this setting cannot be told. Fire nothing that was not looked at before." });
      }
    }
    asking = false;
  }
  function show(words) {
    const at = id => document.getElementById(id);
    const say = (id, text) => { at(id).textContent = text || ""; at(id).hidden = !text; };
    say("live-beyond", words.beyond);
    say("live-note", words.note || words.sentence);
    say("live-does", words.does);
    say("live-rests", words.rests);
    at("live-events").hidden = !words.char;
    at("live").classList.toggle("far", words.tried === false);
    for (const [id, event] of [["live-char", words.char], ["live-clear", words.clear]]) {
      if (!event) continue;
      const row = at(id);
      row.className = event.kept ? "kept" : "broken";
      row.querySelector("b").textContent = event.about;
      row.querySelector("span").textContent = event.bound;
      row.querySelector("em").textContent = event.word;
    }
    at("live").dataset.shown = String(Date.now());
  }

  addEventListener("online", flush);
  addEventListener("storage", tell);
  addEventListener("DOMContentLoaded", () => { tell(); flush(); });
  return { uuid7, now, number, thousands, kept, keep, queue, change, add, addPhoto, flush, live, onReply: l => listeners.push(l),
    hold: (id, value) => store("readwrite", s => s.put(value, id)), held: id => store("readonly", s => s.get(id)),
    forget: id => store("readwrite", s => s.delete(id)).catch(() => {}) };
})();

// Requests to the bench, each with the form token of this page. An answer that is late counts as none.
import { askBy } from "./connection.js";

const PATIENCE = 8000;
const form = { token: document.querySelector("meta[name=bench-token]").content };

export async function request(path, { patience = PATIENCE, ...options }) {
  const stop = new AbortController();
  const late = setTimeout(() => stop.abort(), patience);
  options.signal?.addEventListener("abort", () => stop.abort());
  try {
    return await fetch(path, { ...options, signal: stop.signal, credentials: "same-origin",
      headers: { Accept: "application/json", "X-Bench-Token": form.token, ...options.headers } });
  } finally { clearTimeout(late); }
}

// The status with the words of the answer.
export async function answer(response) {
  let words = {};
  try { words = await response.json(); } catch { /* an answer without words */ }
  return { status: response.status, ...words };
}

// Every page carries the token of its time.
export function takeToken(token) { if (token) form.token = token; }

// A bench that was started anew has other tokens.
export async function renewToken() {
  const response = await request("/pulse", {});
  if (response.ok) form.token = (await response.json()).token;
  return response.ok;
}

askBy(renewToken);

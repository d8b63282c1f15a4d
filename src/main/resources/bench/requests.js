// Requests to the bench, each with the form token of this page. An answer that is late counts as none.
const PATIENCE = 8000, LONG_PATIENCE = 60000;

// Whether the bench was reached last, and the sentence with which it turned this device away, if it did.
export const connection = { reached: true, turnedAway: "" };
const page = { token: document.querySelector("meta[name=bench-token]").content };

export async function request(path, options) {
  const stop = new AbortController();
  const late = setTimeout(() => stop.abort(), options.long ? LONG_PATIENCE : PATIENCE);
  try {
    return await fetch(path, { ...options, signal: stop.signal, credentials: "same-origin",
      headers: { Accept: "application/json", "X-Bench-Token": page.token, ...options.headers } });
  } finally { clearTimeout(late); }
}

// The status with the words of the answer.
export async function answer(response) {
  let words = {};
  try { words = await response.json(); } catch { /* an answer without words */ }
  return { status: response.status, ...words };
}

// A bench that was started anew has other tokens.
export async function renewToken() {
  const response = await request("/pulse", {});
  if (response.ok) page.token = (await response.json()).token;
  return response.ok;
}

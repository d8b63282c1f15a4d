// What this device keeps from visit to visit, as JSON, each under its name.
export function recall(name, fallback) {
  try { return JSON.parse(localStorage.getItem(name)) ?? fallback; } catch { return fallback; }
}

// Null forgets it.
export function remember(name, value) {
  if (value === null) localStorage.removeItem(name); else localStorage.setItem(name, JSON.stringify(value));
}

// Identities that this device makes: sending an entry twice records it once.
const ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

// A UUID of version 7, in the order of time.
export function uuid7() {
  const b = crypto.getRandomValues(new Uint8Array(16));
  let t = Date.now();
  for (let i = 5; i >= 0; i--) { b[i] = t % 256; t = Math.floor(t / 256); }
  b[6] = 0x70 | (b[6] & 15);
  b[8] = 0x80 | (b[8] & 63);
  const hex = [...b].map(x => x.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
}

// A code for the tape of a patch that the log has not taken yet, such as W-7K2M.
export function tapeCode() {
  return "W-" + [...crypto.getRandomValues(new Uint8Array(4))].map(b => ALPHABET[b % 32]).join("");
}

// The time of this device in ISO 8601, to the second, with its offset from UTC.
export function now() {
  const d = new Date(), o = -d.getTimezoneOffset(), two = n => String(Math.floor(Math.abs(n))).padStart(2, "0");
  const local = new Date(d.getTime() + o * 60000).toISOString().slice(0, 19);
  return local + (o < 0 ? "-" : "+") + two(o / 60) + ":" + two(o % 60);
}

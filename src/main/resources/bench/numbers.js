// Numbers as the bench reads them: a decimal comma is a point, and a unit may follow.
const NUMBER = /^([-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[-+]?\d+)?)\s*([^\s\d.,]\S*|)$/i;
const THOUSANDS = /^[-+]?[1-9]\d{0,2}(?:,\d{3})+(?!\d|,\d)/;

// Whether a comma could stand between thousands.
export const thousands = text => THOUSANDS.test(text.trim());

// The value is NaN for what the bench refuses: no number, or a comma that could stand between thousands.
export function number(text) {
  const parts = thousands(text) ? null : NUMBER.exec(text.trim());
  const value = parts ? Number(parts[1].replace(",", ".")) : NaN;
  return { value: Number.isFinite(value) ? value : NaN, unit: parts ? withoutSquare(parts[2]) : "" };
}

// A unit as the bench writes it in plain letters: cm² is cm2.
export const withoutSquare = unit => unit.replace("²", "2");

/** Numbers as a person reads them. */
// @ts-nocheck


/** At most that many places, without trailing zeros. */
export function decimal(value: number, places: number): string {
  return String(Number(value.toFixed(places)));
}

const fractions: readonly [number, string][] = [
  [0, ""],
  [1 / 8, "1/8"],
  [1 / 4, "1/4"],
  [1 / 3, "1/3"],
  [3 / 8, "3/8"],
  [1 / 2, "1/2"],
  [5 / 8, "5/8"],
  [2 / 3, "2/3"],
  [3 / 4, "3/4"],
  [7 / 8, "7/8"],
  [1, ""],
];

/** 1.5 -> `1 1/2`; what is no kitchen fraction stays a decimal. */
export function mixedNumber(value: number): string {
  const whole = Math.floor(value + 1e-9);
  const near = fractions.find(([part]) => Math.abs(value - whole - part) < 0.005);
  if (near === undefined) return decimal(value, 2);
  const ones = near[0] === 1 ? whole + 1 : whole;
  return [ones > 0 || near[1] === "" ? String(ones) : "", near[1]].filter(Boolean).join(" ");
}

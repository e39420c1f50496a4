/** Spoils a value of JSON: keys and values swapped, dropped, doubled, renamed, taken from elsewhere. */
import type { Dice } from "../live/player/dice.js";

type Holder = Record<string, unknown>;

/** A place in a value. */
interface Spot {
  readonly holder: Holder;
  readonly key: string;
}

const strange: readonly unknown[] = [
  ...[null, true, false, 0, -0, -1, 1, 0.1, 1e308, -1e308, 2 ** 53, 5e-324, "", " ", "0", "-"],
  ...["\u0000", "\u202e", "2027-02-30", "9999-12-31", "__proto__", "toString", "1 L", "5 mL per L"],
  ...[[], {}, [[]], [null], [{}], { on: null }, { from: "2027-01-01" }, Array(50).fill(1)],
];

function spotsIn(value: unknown, found: Spot[] = []): Spot[] {
  if (typeof value !== "object" || value === null) return found;
  for (const key of Object.keys(value)) {
    found.push({ holder: value as Holder, key });
    spotsIn((value as Holder)[key], found);
  }
  return found;
}

/** Own keys alone, `__proto__` too. */
function put({ holder, key }: Spot, value: unknown): void {
  Object.defineProperty(holder, key, {
    ...{ value, enumerable: true, writable: true, configurable: true },
  });
}

function less({ holder, key }: Spot): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else Reflect.deleteProperty(holder, key);
}

function again({ holder, key }: Spot, dice: Dice): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 0, structuredClone(holder[Number(key)]));
  else put({ holder, key: `${key}${dice.pick(["", "s", "_2"])}` }, holder[key]);
}

function renamed(spot: Spot, name: string): void {
  const { holder, key } = spot;
  if (Array.isArray(holder)) return;
  const value = holder[key];
  less(spot);
  put({ holder, key: name }, value);
}

/** A number, or the first one in a text, a little or far off. */
function bent(value: unknown, dice: Dice): unknown {
  const factor = dice.pick([-1, 0, 0.001, 0.5, 0.99, 1.01, 2, 10, 1e6]);
  if (typeof value === "number") return value * factor;
  if (typeof value === "string")
    return value.replace(/\d+(?:\.\d+)?/, (number) => String(Number(number) * factor));
  return value;
}

/**
 * @param other a second value of the kind, from which pieces come; it stays as it is
 * @returns JSON
 */
export function spoiltJson(value: unknown, dice: Dice, other: unknown): string {
  const spoilt: Holder = { all: structuredClone(value) };
  const changes = dice.chance(0.6) ? 1 : dice.between(2, 4);
  for (let i = 0; i < changes; i++) change(spoilt, dice, other);
  const { all = null } = spoilt;
  return JSON.stringify(all);
}

function change(all: Holder, dice: Dice, other: unknown): void {
  const spots = spotsIn(all);
  const spot = dice.maybe(spots);
  const from = dice.maybe(spotsIn(other));
  if (spot === undefined) return;
  const what = dice.between(0, 7);
  if (what === 0) less(spot);
  else if (what === 1) again(spot, dice);
  else if (what === 2) put(spot, structuredClone(dice.pick(strange)));
  else if (what === 3 && from) renamed(spot, from.key);
  else if (what === 4) {
    const second = dice.pick(spots);
    const [one, two] = [spot.holder[spot.key], second.holder[second.key]];
    put(spot, structuredClone(two));
    put(second, structuredClone(one));
  } else if (what < 7 || from === undefined) put(spot, bent(spot.holder[spot.key], dice));
  else {
    // A value of the same name, as a rule, still fits.
    const twins = spots.filter(({ key }) => key === from.key);
    put(dice.maybe(twins) ?? spot, structuredClone(from.holder[from.key]));
  }
}

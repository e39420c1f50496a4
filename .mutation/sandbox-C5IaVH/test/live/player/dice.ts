/** A small generator of its own: the same seed throws the same dice on every machine. */
// @ts-nocheck

export class Dice {
  #state: number;

  constructor(...seeds: readonly number[]) {
    this.#state = seeds.reduce(
      (state, seed) => Math.imul(state ^ seed, 0x9e3779b1) + 0x7f4a7c15,
      1,
    );
    this.next();
  }

  /** 0 up to, but not, 1 (mulberry32, public domain, from memory). */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number, both ends among them. */
  between(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1));
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  pick<T>(from: readonly T[]): T {
    const one = from[this.between(0, from.length - 1)];
    if (one === undefined) throw new Error("nothing to pick from");
    return one;
  }

  /** None where there is nothing to pick from. */
  maybe<T>(from: readonly T[]): T | undefined {
    return from.length === 0 ? undefined : this.pick(from);
  }
}

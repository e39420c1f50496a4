/** For sorting text, and days, which sort as text; the same on every machine. */
export function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The keys whose value is not undefined: for optional properties. */
export function given<T extends object>(values: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const kept: Partial<T> = {};
  for (const key in values) if (values[key] !== undefined) kept[key] = values[key];
  return kept as { [K in keyof T]?: Exclude<T[K], undefined> };
}

/** Lists of like items under their key, in order of first appearance: Map.groupBy of later Node.js. */
export function grouped<T, K>(items: readonly T[], keyOf: (item: T) => K): Map<K, [T, ...T[]]> {
  const groups = new Map<K, [T, ...T[]]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}

/** As JSON, the same whatever the order of keys; empty for nothing. */
export function inOneOrder(value: unknown): string {
  const text = JSON.stringify(value, (_, part: unknown) =>
    typeof part === "object" && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => byText(a, b)))
      : part,
  ) as string | undefined;
  return text ?? "";
}

/**
 * A pure step that remembers what it gave for its last arguments, at most so many: gardens that are
 * planned one after the other have much in common.
 *
 * @param keyOf tells arguments apart that give something else
 */
export function remembering<A extends readonly unknown[], T>(
  most: number,
  keyOf: (...args: A) => string,
  step: (...args: A) => T,
): (...args: A) => T {
  const known = new Map<string, T>();
  return (...args) => {
    const key = keyOf(...args);
    const before = known.get(key);
    if (before !== undefined) return before;
    const made = step(...args);
    if (known.size >= most) known.clear();
    known.set(key, made);
    return made;
  };
}

/** As {@link remembering}, for each owner apart, as long as that is in use. */
export function rememberingFor<Owner extends object, A extends readonly unknown[], T>(
  most: number,
  keyOf: (...args: A) => string,
  step: (owner: Owner, ...args: A) => T,
): (owner: Owner, ...args: A) => T {
  const steps = new WeakMap<Owner, (...args: A) => T>();
  return (owner, ...args) => {
    const known = steps.get(owner) ?? remembering(most, keyOf, (...own: A) => step(owner, ...own));
    steps.set(owner, known);
    return known(...args);
  };
}

/** Smallest and largest sensible amount, in the base unit. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
  /** The bounds in words: `0.1 L to 100 L`. */
  readonly words: string;
}

/** What is wrong with an amount beyond its bounds; a conversion's last digits are within them. */
export function absurdSize(
  text: string,
  amount: number,
  { least, most, words }: Bounds,
): { message: string; mend: string } | undefined {
  const isSmall = amount < least * (1 - 1e-9);
  if (!isSmall && !(amount > most * (1 + 1e-9))) return undefined;
  return {
    message: `\`${text}\` is too ${isSmall ? "small" : "large"} to be meant`,
    mend: `check the number and the unit; ${words} is understood`,
  };
}

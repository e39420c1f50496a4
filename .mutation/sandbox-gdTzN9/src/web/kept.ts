/** The text as it was last written, kept in this browser: a closed page loses nothing. */
// @ts-nocheck


export interface Kept {
  readonly name: string;
  /** As it is in the editor. */
  readonly text: string;
  /** As it was opened or saved last, with its form. */
  readonly raw: string;
  /** What the server called that. */
  readonly seen?: string;
  /** The text that this one took the place of, unsaved. */
  readonly before?: string;
}

const key = `feedround ${location.pathname}`;

export function readKept(): Kept | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(key) ?? "null") as Partial<Kept> | null;
    const { name, text, raw } = kept ?? {};
    const isWhole = [name, text, raw].every((value) => typeof value === "string");
    return isWhole ? (kept as Kept) : undefined;
  } catch {
    return undefined;
  }
}

/** False where the browser keeps nothing. */
export function keep(kept: Kept): boolean {
  try {
    localStorage.setItem(key, JSON.stringify(kept));
    return true;
  } catch {
    return false;
  }
}

export function forgetKept(): void {
  try {
    localStorage.removeItem(key);
  } catch {
    // What keeps nothing has nothing to forget.
  }
}

/** Names that the grower wrote, within our words. */

/** A name kept from turning the text around it when it runs right to left, where no elements can be. */
export function isolated(name: string): string {
  return `\u2068${name}\u2069`;
}

// Blocks whose letters run right to left: Unicode Character Database, DerivedBidiClass.txt, R and AL.
const rightToLeft =
  /[\u0590-\u08ff\u200f\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** Isolated only where it runs right to left: the marks take room. */
export function nameInText(name: string): string {
  return rightToLeft.test(name) ? isolated(name) : name;
}

let segmenter: Intl.Segmenter | undefined;

/** Printable ASCII and the mark that something was cut need no segmenter, which is a hundred times slower. */
const oneEach = /^[ -~…]*$/;

/** What a reader takes for one letter each: never cuts an emoji or an accent. */
export function letters(text: string): string[] {
  if (oneEach.test(text)) return Array.from(text);
  segmenter ??= new Intl.Segmenter("en", { granularity: "grapheme" });
  return [...segmenter.segment(text)].map(({ segment }) => segment);
}

/** Whether it has no more letters than that. */
export function hasAtMost(most: number, text: string): boolean {
  return text.length <= most || (!oneEach.test(text) && letters(text).length <= most);
}

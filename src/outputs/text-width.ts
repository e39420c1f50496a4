/**
 * How wide a text may become, before any font is known: from the widths of letters in the common
 * sans-serif fonts, taken from the widest of them, so that what is said to fit does fit. The
 * browser tests measure it against real fonts.
 */

/** Widths in em of bold letters in the widest common screen font; from memory, then measured. */
const widths: readonly [RegExp, number][] = [
  [/^[\p{Mn}\p{Me}\p{Cf}]/u, 0],
  [/^\p{Extended_Pictographic}|^\p{Regional_Indicator}/u, 1.45],
  [/^[il.,:;'|!·]/u, 0.42],
  [/^[jtfr()[\]/ -]/u, 0.52],
  [/^[mwMW@%—…]/u, 1.12],
  [/^\p{Lu}/u, 0.88],
  [/^[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/u, 1.05],
  [/^./u, 0.73],
];

const segmenter = new Intl.Segmenter("en", { granularity: "grapheme" });

/** What a reader takes for one letter each: never cuts an emoji or an accent. */
export function letters(text: string): string[] {
  return [...segmenter.segment(text)].map(({ segment }) => segment);
}

/** At most this wide, in em of the font. */
export function widthEm(text: string): number {
  return letters(text).reduce((sum, letter) => sum + letterEm(letter), 0);
}

/** The whole text, or its beginning and an ellipsis, within that width. */
export function shortened(text: string, mostEm: number): string {
  if (widthEm(text) <= mostEm) return text;
  let room = mostEm - letterEm("…");
  const kept: string[] = [];
  for (const letter of letters(text)) {
    room -= letterEm(letter);
    if (room < 0) break;
    kept.push(letter);
  }
  return `${kept.join("").trimEnd()}…`;
}

/** Lines that a browser may need at most, words longer than a line broken anywhere. */
export function linesNeeded(text: string, lineEm: number): number {
  let lines = 1;
  let used = 0;
  for (const word of text.split(/\s+/)) {
    const width = widthEm(word);
    const gap = used === 0 ? 0 : letterEm(" ");
    if (used + gap + width <= lineEm) used += gap + width;
    else if (width <= lineEm) [lines, used] = [lines + 1, width];
    else {
      // The widest letter may not fit at the end of each line.
      const rows = Math.ceil(width / Math.max(lineEm - 1.45, 0.5));
      lines += rows - (used === 0 ? 1 : 0);
      used = lineEm;
    }
  }
  return lines;
}

function letterEm(letter: string): number {
  return widths.find(([kind]) => kind.test(letter))?.[1] ?? 0;
}

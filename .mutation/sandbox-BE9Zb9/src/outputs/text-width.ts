/**
 * How wide a text may become, before any font is known: from the widths of letters in the common
 * sans-serif fonts, taken from the widest of them, so that what is said to fit does fit. The
 * browser tests measure it against real fonts.
 */
// @ts-nocheck


import { letters } from "../words/index.js";

/** `screen`: any common font. `print`: Arial and fonts of its measure, as on labels. */
export type Font = "screen" | "print";

/** Widths in em of bold letters, the widest of each kind; from memory, then measured. */
const widths: readonly [RegExp, Readonly<Record<Font, number>>][] = [
  [/^[\p{Mn}\p{Me}\p{Cf}]/u, { screen: 0, print: 0 }],
  [/^\p{Extended_Pictographic}|^\p{Regional_Indicator}/u, { screen: 1.45, print: 1.45 }],
  [/^[il.,:;'|!·]/u, { screen: 0.42, print: 0.34 }],
  [/^[jtfr()[\]/ \u00a0-]/u, { screen: 0.52, print: 0.4 }],
  [/^[mwMW@%—…]/u, { screen: 1.12, print: 1.01 }],
  [/^\p{Lu}/u, { screen: 0.88, print: 0.79 }],
  [/^[a-z0-9]/u, { screen: 0.73, print: 0.63 }],
  [
    /^[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/u,
    { screen: 1.05, print: 1.05 },
  ],
  [/^./u, { screen: 0.8, print: 0.8 }],
];

/** At most this wide, in em of the font. */
export function widthEm(text: string, font: Font = "screen"): number {
  return letters(text).reduce((sum, letter) => sum + letterEm(letter, font), 0);
}

/** The whole text, or its beginning and an ellipsis, within that width. */
export function shortened(text: string, mostEm: number, font: Font = "screen"): string {
  if (widthEm(text, font) <= mostEm) return text;
  let room = mostEm - letterEm("…", font);
  const kept: string[] = [];
  for (const letter of letters(text)) {
    room -= letterEm(letter, font);
    if (room < 0) break;
    kept.push(letter);
  }
  return `${kept.join("").trimEnd()}…`;
}

function letterEm(letter: string, font: Font): number {
  const em = known[font].get(letter) ?? widths.find(([kind]) => kind.test(letter))?.[1][font] ?? 0;
  known[font].set(letter, em);
  return em;
}

/** Labels ask for the same letters thousands of times. */
const known: Readonly<Record<Font, Map<string, number>>> = { screen: new Map(), print: new Map() };

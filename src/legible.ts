/** Text that reads as it looks: what hides in it, turns it around or acts on a terminal is shown. */
import { remembering } from "./values.js";

// Unicode's own classes: control characters, line and paragraph separators, halves of a letter, and
// what is drawn as nothing or changes the direction of its neighbours. Joiners and breaks without
// width belong to scripts other than Latin, Greek and Cyrillic, and to emoji; so do selectors of a
// form, and tags after the flag that they name.
const needed =
  "(?<![^\\P{L}\\p{Script=Latin}\\p{Script=Greek}\\p{Script=Cyrillic}]|[\\p{M}\\p{Extended_Pictographic}\\p{Emoji_Modifier}])[\\u034f\\u200b-\\u200d]";
const tag = "(?<!\\u{1f3f4}[\\u{e0020}-\\u{e007f}]{0,7})[\\u{e0020}-\\u{e007f}]";
const drawnAsNothing =
  "(?![\\u034f\\u180b-\\u180f\\u200b-\\u200d\\ufe00-\\ufe0f\\u{e0020}-\\u{e007f}\\u{e0100}-\\u{e01ef}])\\p{Default_Ignorable_Code_Point}";
const acting = "[^\\P{Cc}\\t\\n\\r]|[\\p{Zl}\\p{Zp}\\p{Cs}\\ufff9-\\ufffb]";
const hidden = `${acting}|${drawnAsNothing}|${needed}|${tag}`;

/** Made when first asked for: a class of Unicode takes a while. */
const pattern = remembering(
  10,
  (source: string, flags: string) => `${flags} ${source}`,
  (source, flags) => new RegExp(source, flags),
);

/** Latin letters, signs and dashes: no text of only these has to be looked at by class. */
const plain = /^[\n -~\u00a0-\u00ac\u00ae-\u024f\u2010-\u2027]*$/;

/** The first letter that hides or acts, and where; line breaks and tabs do not count. */
export function hiddenIn(
  text: string,
): { readonly at: number; readonly letter: string } | undefined {
  if (plain.test(text)) return undefined;
  const found = pattern(hidden, "u").exec(text);
  return found === null ? undefined : { at: found.index, letter: found[0] };
}

/**
 * A text of several lines as it may be printed: hidden letters as `\u202e`, which means the same in
 * JSON and in quotes in YAML. Isolates stay, since we put them around names: they end with their line.
 */
export function legible(text: string): string {
  if (plain.test(text)) return text;
  return text.replace(pattern(`(?![\\u2068\\u2069])(?:\\r(?!\\n)|${hidden})`, "gu"), escaped);
}

/** A name or a word from elsewhere within a line: line breaks and tabs are shown too. */
export function legibleWord(word: string): string {
  return legible(word).replace(/[\t\n\r]/g, escaped);
}

function escaped(letters: string): string {
  return letters.replace(
    /[^]/g,
    (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}

/** As a reader takes it in: runs of blanks and line breaks are one blank, none at the ends. */
export function onOneLine(text: string): string {
  return text.trim().replace(/\s{2,}|[\t\n\r]/g, " ");
}

/** A text of an earlier version as a file has it now: one line, nothing hidden; itself where that is all. */
export function mended(text: string): string {
  const left = onOneLine(plain.test(text) ? text : text.replace(pattern(hidden, "gu"), ""));
  return left === "" ? text : left;
}

/** For JSON.parse: every text in a value {@link mended}. */
export function mendedTexts(_key: string, value: unknown): unknown {
  return typeof value === "string" ? mended(value) : value;
}

/** U+202E */
export function codePoint(letter: string): string {
  return `U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`;
}

const longestQuoted = 100;

/** A value from elsewhere as a message quotes it: one line, legible, and not too long. */
export function quoted(value: string): string {
  const line = legible(onOneLine(value.slice(0, 4 * longestQuoted)));
  if (line.length <= longestQuoted && value.length <= 4 * longestQuoted) return line;
  // Never half a letter at the end.
  return `${line.slice(0, longestQuoted - 3).replace(/[\ud800-\udbff]$/, "")}...`;
}

const longestMessage = 1000;

/** A message or a mend that quotes values between backticks: on one line, each of them {@link quoted}. */
export function legibleMessage(text: string): string {
  const short = text.replace(/`([^`]+)`/g, (_, value: string) => `\`${quoted(value)}\``);
  const line = legible(onOneLine(short.slice(0, 2 * longestMessage)));
  return line.length > longestMessage ? `${line.slice(0, longestMessage)}...` : line;
}

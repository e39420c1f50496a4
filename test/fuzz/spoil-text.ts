/** Spoils text: a few changes to its letters, words, lines, indented blocks, numbers and days. */
import { addDays, parseDay } from "../../src/dates.js";
import type { Dice } from "../live/player/dice.js";

/** What a text is spoilt with. */
export interface Spices {
  /** Words that mean something in such a text. */
  readonly words: readonly string[];
  /** Other texts of the kind, to take pieces from. */
  readonly others: readonly string[];
}

type Spoil = (text: string, dice: Dice, spices: Spices) => string;

const edgeDays = [
  ...["0000-00-00", "0001-01-01", "1899-12-31", "1970-01-01", "2027-02-29", "2028-02-29"],
  ...["2027-06-31", "2027-6-1", "2026-12-31", "2027-01-01", "2199-12-31", "9999-12-31"],
];

const edgeNumbers = [
  ...["0", "-0", "1", "-1", "2", "9", "0.1", "0.0000001", "1e3", "1e400", ".5", "5.", "1,5", "½"],
  ...["1/0", "0/0", "3 1/2", "255", "256", "65536", "2147483648", "9007199254740993", "1_000"],
  ...["99999999999999999999", ".inf", "-.inf", ".nan", "0x1F", "0o17", "NaN", "Infinity"],
];

/** Signs that break readers of text, or show badly. */
const signs = [
  ...[
    "[",
    "]",
    "{",
    "}",
    ":",
    ",",
    "#",
    '"',
    "'",
    "\\",
    "|",
    ">",
    "?",
    "-",
    "&a ",
    "*a",
    "!x ",
    "%",
  ],
  ...["\t", "\r", "\n", "\r\n", "\u0000", "\u001b[31m", "\u0007", "\u0085", "\u2028", "\u202e"],
  ...["\u2066", "\ufeff", "\ufffd", "\ud800", "🍅", "ﬃ", "é", "e\u0301", "菜", "\u00a0", "\u200b"],
  ...["---\n", "...\n", "<<: ", "__proto__", "constructor", "<script>", "&amp;", "%00", "../"],
];

function at(text: string, dice: Dice): number {
  return dice.between(0, text.length);
}

/** A place and one a little behind it. */
function piece(text: string, dice: Dice, most = 40): [from: number, to: number] {
  const from = at(text, dice);
  return [from, Math.min(text.length, from + dice.between(1, most))];
}

function instead(text: string, [from, to]: readonly [number, number], other: string): string {
  return text.slice(0, from) + other + text.slice(to);
}

/** Replaces one match of a pattern, if there is any. */
function oneOf(pattern: RegExp, change: (found: string, dice: Dice, s: Spices) => string): Spoil {
  return (text, dice, spices) => {
    const match = dice.maybe([...text.matchAll(pattern)]);
    if (match === undefined) return text;
    const to = match.index + match[0].length;
    return instead(text, [match.index, to], change(match[0], dice, spices));
  };
}

const onDays = oneOf(/\d{4}-\d{2}-\d{2}/g, (found, dice) => {
  const day = parseDay(found);
  if (day === undefined || dice.chance(0.15)) return dice.pick(edgeDays);
  return addDays(day, dice.chance(0.7) ? dice.between(-40, 40) : dice.between(-800, 800));
});

const onNumbers = oneOf(/(?<![\w-])\d+(?:\.\d+)?(?![\w-])/g, (found, dice) => {
  if (dice.chance(0.3)) return dice.pick(edgeNumbers);
  const value = Number(found) * dice.pick([0, 0.1, 0.5, 0.9, 1.1, 2, 3, 10, 1000]);
  return String(dice.chance(0.5) ? Math.round(value) : value);
});

const words = /[\p{L}\p{N}_][\p{L}\p{N}_.-]*/gu;
const otherWord = oneOf(words, (_, dice, spices) => dice.pick(spices.words));
const noWord = oneOf(words, () => "");
const doubleWord = oneOf(words, (found, dice) => `${found}${dice.pick(["", " ", "-"])}${found}`);
const bentWord = oneOf(words, (found, dice) =>
  dice.pick([
    found.toUpperCase(),
    found.slice(1),
    `${found}s`,
    `"${found}"`,
    `'${found}`,
    found.slice(1) + found.slice(0, 1),
  ]),
);

const aSign: Spoil = (text, dice, spices) => {
  const from = at(text, dice);
  return instead(text, [from, from + dice.between(0, 1)], anySign(dice, spices));
};

function anySign(dice: Dice, { words: known }: Spices): string {
  if (dice.chance(0.6)) return dice.pick(signs);
  if (dice.chance(0.5)) return String.fromCodePoint(dice.between(0, 0x2fff));
  return dice.pick(known);
}

const cut: Spoil = (text, dice) => instead(text, piece(text, dice), "");
const doubled: Spoil = (text, dice) => {
  const [from, to] = piece(text, dice);
  return instead(text, [to, to], text.slice(from, to));
};
const endless: Spoil = (text, dice) => {
  const [from, to] = piece(text, dice, 6);
  return instead(text, [to, to], text.slice(from, to).repeat(dice.pick([3, 20, 300])));
};
const endOff: Spoil = (text, dice) => text.slice(0, at(text, dice));
const spliced: Spoil = (text, dice, { others }) => {
  const other = dice.pick(others);
  return text.slice(0, at(text, dice)) + other.slice(at(other, dice));
};
const inserted: Spoil = (text, dice, { others }) => {
  const other = dice.pick(others);
  const [from, to] = piece(other, dice, 120);
  const place = at(text, dice);
  return instead(text, [place, place], other.slice(from, to));
};

type OnLines = (lines: string[], dice: Dice, spices: Spices) => void;

function onLines(change: OnLines): Spoil {
  return (text, dice, spices) => {
    const lines = text.split("\n");
    change(lines, dice, spices);
    return lines.join("\n");
  };
}

/** A line and what stands further in below it: in YAML a value with its key. */
function blockAt(lines: readonly string[], first: number): number {
  const depth = lines[first]?.search(/\S/) ?? 0;
  let next = first + 1;
  while (next < lines.length && (lines[next]?.search(/\S/) ?? -1) > depth) next++;
  return next - first;
}

function place(lines: readonly string[], dice: Dice): number {
  return dice.between(0, lines.length - 1);
}

const lessLine = onLines((lines, dice) => lines.splice(place(lines, dice), 1));
const twiceLine = onLines((lines, dice) => {
  const i = place(lines, dice);
  lines.splice(i, 0, lines[i] ?? "");
});
const lessBlock = onLines((lines, dice) => {
  const i = place(lines, dice);
  lines.splice(i, blockAt(lines, i));
});
const twiceBlock = onLines((lines, dice) => {
  const i = place(lines, dice);
  lines.splice(i, 0, ...lines.slice(i, i + blockAt(lines, i)));
});
const movedBlock = onLines((lines, dice) => {
  const i = place(lines, dice);
  const block = lines.splice(i, blockAt(lines, i));
  lines.splice(dice.between(0, lines.length), 0, ...block);
});
const otherBlock = onLines((lines, dice, { others }) => {
  const other = dice.pick(others).split("\n");
  const [i, k] = [place(lines, dice), place(other, dice)];
  const isAdded = dice.chance(0.5);
  lines.splice(i, isAdded ? 0 : blockAt(lines, i), ...other.slice(k, k + blockAt(other, k)));
});
const setIn = onLines((lines, dice) => {
  const i = place(lines, dice);
  const line = lines[i] ?? "";
  lines[i] = dice.chance(0.5) ? `  ${line}` : line.replace(/^ {1,2}/, "");
});

/** The mild ones, which leave most texts good, come more often. */
const spoils: readonly Spoil[] = [
  ...[onDays, onDays, onDays, onNumbers, onNumbers, onNumbers, otherWord, otherWord, otherWord],
  ...[noWord, doubleWord, bentWord, aSign, aSign, cut, doubled, endless, endOff, spliced, inserted],
  ...[lessLine, lessLine, twiceLine, lessBlock, twiceBlock, movedBlock, otherBlock, otherBlock],
  setIn,
];

/** One to four changes; a text that has grown beyond all bounds is cut. */
export function spoilText(text: string, dice: Dice, spices: Spices): string {
  let spoilt = text;
  const changes = dice.chance(0.6) ? 1 : dice.between(2, 4);
  for (let i = 0; i < changes; i++) spoilt = dice.pick(spoils)(spoilt, dice, spices);
  return spoilt.slice(0, 4 * text.length + 2000);
}

/** Bytes of a text, sometimes spoilt below its letters. */
export function spoilBytes(text: string, dice: Dice): Uint8Array {
  const bytes = new TextEncoder().encode(text);
  if (bytes.length === 0 || dice.chance(0.9)) return bytes;
  for (let i = dice.between(1, 3); i > 0; i--)
    bytes[dice.between(0, bytes.length - 1)] = dice.between(0, 255);
  return bytes;
}

import { type Document, isPair, isScalar, type Scalar, visit } from "yaml";
import { codePoint, hiddenIn } from "../legible.js";

export interface HiddenLetter {
  readonly offset: number;
  /** Of the letter as it stands in the file; 0 where it is written as an escape. */
  readonly length: number;
  readonly message: string;
  readonly mend: string;
}

/** What hides in keys and values of a file, or turns them around: the first of each. */
export function hiddenLetters(doc: Document.Parsed, text: string): HiddenLetter[] {
  const found: HiddenLetter[] = [];
  visit(doc, {
    Scalar(role, node, path) {
      const hidden = hiddenIn(String(node.value));
      if (hidden === undefined) return;
      const [from = 0, to = 0] = node.range ?? [];
      const there = hiddenIn(text.slice(from, to));
      const pair = path.findLast(isPair);
      const name = role !== "key" && isScalar(pair?.key) ? quotedKey(pair.key) : "this";
      found.push({
        offset: from + (there?.at ?? 0),
        length: there?.letter.length ?? 0,
        message: `${role === "key" ? "this key" : name} holds ${kindOf(hidden.letter)}, ${codePoint(hidden.letter)}`,
        mend: there === undefined ? "take out its escape" : "take it out, or write it anew",
      });
    },
  });
  return found;
}

function quotedKey({ value }: Scalar): string {
  return `\`${String(value)}\``;
}

function kindOf(letter: string): string {
  if (/\p{Cc}/u.test(letter)) return "a control character";
  if (/[\p{Zl}\p{Zp}]/u.test(letter)) return "a line break of another kind";
  if (/\p{Cs}/u.test(letter)) return "half a letter";
  return /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/.test(letter)
    ? "a sign that turns the text around it"
    : "a sign that nobody sees";
}

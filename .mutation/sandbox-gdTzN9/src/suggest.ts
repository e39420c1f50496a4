// @ts-nocheck
import { distance } from "fastest-levenshtein";

/** The known word a writer most likely meant, or undefined when none is near. */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  const words = [...known];
  const wanted = word.toLowerCase();
  let best: string | undefined;
  let bestDistance = Math.max(2, Math.floor(wanted.length / 3)) + 1;
  for (const candidate of words) {
    // Lengths so far apart need no counting of edits, which takes long for a very long word.
    if (Math.abs(candidate.length - wanted.length) >= bestDistance) continue;
    const edits = distance(wanted, candidate.toLowerCase());
    if (edits < bestDistance && edits < candidate.length) {
      best = candidate;
      bestDistance = edits;
    }
  }
  if (best !== undefined) return best;
  // `wednesday` means `wed`.
  const beginnings = words.filter((c) => c.length > 2 && wanted.startsWith(c.toLowerCase()));
  return beginnings.sort((a, b) => b.length - a.length)[0];
}

/** What is to be written for a number with a comma: `1,5 L` -> `write 1.5 L`. */
export function commaMend(text: string): string | undefined {
  const [number] = /\d+(?:,\d+)+/.exec(text) ?? [];
  if (number === undefined) return undefined;
  return `write ${isThousands(number) ? "thousands without a comma, like " : ""}${withoutComma(text)}`;
}

/** An id as near to a name as one can be: `Balcony pots` -> `Balcony-pots`; empty for other scripts. */
export function idLike(name: string): string {
  const plain = name.normalize("NFKD").replace(/[\u0300-\u036f]/g, "");
  if (/[^\P{L}A-Za-z]/u.test(plain)) return "";
  return (plain.match(/[A-Za-z0-9._-]+/g) ?? []).join("-");
}

/** ``did you mean `tomato`?`` or the fallback. */
export function didYouMean(word: string, known: Iterable<string>, otherwise: string): string {
  return meant(nearest(word, known), otherwise).mend;
}

/** A mend in words and, where one word alone can be meant, as the text to write. */
export interface Mending {
  readonly mend: string;
  readonly fix?: string;
}

/** {@link didYouMean} of a word of the file that {@link nearest} or the like has found. */
export function meant(near: string | undefined, otherwise: string): Mending {
  if (near === undefined) return { mend: otherwise };
  return { mend: `did you mean \`${near}\`?`, fix: yamlWord(near) };
}

/** A text as a value of YAML: in quotes where it would be read as something else. */
export function yamlWord(text: string): string {
  const isPlain = /^[\p{L}](?:[\p{L}\d ._/-]*[\p{L}\d])?$/u.test(text);
  return isPlain && !/^(?:true|false|null)$/i.test(text) ? text : JSON.stringify(text);
}

/** The same text with a point for the comma, or without those of thousands. */
export function withoutComma(text: string): string {
  return text.replace(/\d+(?:,\d+)+/, (number) =>
    isThousands(number) ? number.replaceAll(",", "") : number.replace(",", "."),
  );
}

function isThousands(number: string): boolean {
  return /^[1-9]\d{0,2}(,\d{3})+$/.test(number);
}

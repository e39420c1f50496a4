/** Text of a calendar file -> its content lines, whatever editors and syncing did to their shape. */
import { nameOfLine, valueOfLine } from "./content-line.js";

/** One content line, unfolded, and the physical lines it stands on: from `first` up to but not `next`. */
export interface ContentLine {
  /** Its name in capitals, as we write them. */
  readonly text: string;
  readonly first: number;
  readonly next: number;
  /** As we write it: in capitals, and no blank line behind it. */
  readonly isIntact: boolean;
}

/** Without the mark of byte order; any line ends, with or without one at the end. */
export function physicalLines(text: string): string[] {
  return text.replace(/^\ufeff/, "").split(/\r\n|\r|\n/);
}

const contentLine = /^[A-Z0-9-]+(;[A-Z0-9-]+=("[^"]*"|[^";:,]*)(,("[^"]*"|[^";:,]*))*)*:/;

/** @param refuse throws, for the index of a line that is none */
export function unfold(
  physical: readonly string[],
  refuse: (first: number) => Error,
): ContentLine[] {
  const lines: ContentLine[] = [];
  const isBlank = (at: number): boolean => physical[at] === "";
  for (let first = 0, next = 1; first < physical.length; first = next++) {
    if (isBlank(first)) continue;
    const parts = [physical[first] ?? ""];
    for (; /^[ \t]/.test(physical[next] ?? ""); next++) parts.push((physical[next] ?? "").slice(1));
    const written = parts.join("");
    const text = inCapitals(written);
    if (!contentLine.test(text)) throw refuse(first);
    lines.push({ text, first, next, isIntact: text === written && !isBlank(next) });
  }
  return lines;
}

function inCapitals(line: string): string {
  const named = line.replace(/^[a-z0-9-]+/i, (name) => name.toUpperCase());
  return /^(?:BEGIN|END)$/.test(nameOfLine(named))
    ? `${nameOfLine(named)}:${valueOfLine(named).toUpperCase()}`
    : named;
}

/**
 * Rows of comma- or semicolon-separated text as RFC 4180 has it, each cell with its place, which no
 * library of the registry tells.
 */
// @ts-nocheck

export interface CsvRow {
  /** Without blanks around them, unquoted. */
  readonly cells: readonly string[];
  /** Where in the text each cell begins. */
  readonly offsets: readonly number[];
  /** Offset of a quote that isn't closed, or is closed in the middle of its cell. */
  readonly strayQuote?: number;
}

export type Separator = "," | ";";

/** Rows from an offset on, but for empty ones and those that begin with `#`. */
export function* csvRows(text: string, separator: Separator, from = 0): Generator<CsvRow> {
  const toEndOfCell = separator === "," ? /[^,\n]*/y : /[^;\n]*/y;
  const toEndOfLine = /[^\n]*/y;
  const blanks = /[ \t]*/y;
  for (let at = from; at < text.length;) {
    if (text[at] === "#") {
      at = endOf(toEndOfLine, text, at) + 1;
      continue;
    }
    const cells: string[] = [];
    const offsets: number[] = [];
    let strayQuote: number | undefined;
    for (let isLast = false; !isLast;) {
      const start = endOf(blanks, text, at);
      const isQuoted = text[start] === '"';
      const close = isQuoted ? closingQuote(text, start) : start;
      const end = endOf(toEndOfCell, text, close);
      if (isQuoted) {
        cells.push(
          text
            .slice(start + 1, close)
            .replaceAll('""', '"')
            .trim(),
        );
        if (text.slice(close, end).trim() !== '"') strayQuote ??= start;
      } else cells.push(text.slice(start, end).trim());
      offsets.push(start);
      isLast = text[end] !== separator;
      at = end + 1;
    }
    if (cells.some((cell) => cell !== ""))
      yield strayQuote === undefined ? { cells, offsets } : { cells, offsets, strayQuote };
  }
}

/** The end of the text where there is none. */
function closingQuote(text: string, open: number): number {
  let close = text.indexOf('"', open + 1);
  while (close !== -1 && text[close + 1] === '"') close = text.indexOf('"', close + 2);
  return close === -1 ? text.length : close;
}

function endOf(sticky: RegExp, text: string, from: number): number {
  sticky.lastIndex = from;
  sticky.test(text);
  return sticky.lastIndex;
}

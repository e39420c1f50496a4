/** Text of one width: tables, lists, paragraphs. */
// @ts-nocheck

import { styleText } from "node:util";
import stringWidth from "string-width";
import type { Shell } from "./shell.js";

export interface TextStyle {
  readonly width: number;
  /** Makes a heading stand out. */
  readonly heading: (text: string) => string;
  /** What is over. Words beside it must say so too, as for each of these: colour is never alone. */
  readonly past: (text: string) => string;
  /** What is to be done next. */
  readonly next: (text: string) => string;
  readonly warning: (text: string) => string;
}

const widthWithoutTerminal = 100;

export function textStyle(shell: Shell): TextStyle {
  const styled =
    (...format: ("bold" | "dim" | "green" | "yellow")[]) =>
    (text: string): string => {
      if (!shell.color) return text;
      // Line by line, since a pager begins each line anew.
      const styledLine = (line: string) => styleText(format, line, { validateStream: false });
      return text
        .split("\n")
        .map((line) => (line === "" ? "" : styledLine(line)))
        .join("\n");
    };
  return {
    width: Math.max(40, Math.min(shell.columns ?? widthWithoutTerminal, 120)),
    heading: styled("bold"),
    past: styled("dim"),
    next: styled("bold", "green"),
    warning: styled("yellow"),
  };
}

/** Sections with a blank line between them; those without text are left out. */
export function page(sections: readonly string[]): string {
  return sections.filter((section) => section !== "").join("\n\n") + "\n";
}

/** A heading over lines with a mark each; no text where there are none. */
export function listed(title: string, lines: readonly string[], style: TextStyle): string {
  if (lines.length === 0) return "";
  return [style.heading(title), ...lines.map((line) => bullet(line, style.width))].join("\n");
}

/** Lines that need attention, each with a mark of its own. */
export function warned(title: string, lines: readonly string[], style: TextStyle): string {
  if (lines.length === 0) return "";
  const marked = lines.map((line) => style.warning(bullet(line, style.width, "! ")));
  return [style.heading(title), ...marked].join("\n");
}

/** A heading over a table that is set in. */
export function tabled(title: string, rows: Rows, style: TextStyle): string {
  return `${style.heading(title)}\n${table(rows, "  ", style.width)}`;
}

export type Rows = readonly (readonly string[])[];

const usualLeastRoom = 20;

/**
 * Rows of cells -> aligned lines; the last column wraps to what is left of the width. Where that is
 * too little to read, the last cell goes below the others.
 */
export function table(rows: Rows, indent: string, width: number): string {
  return tables([rows], indent, width)[0] ?? "";
}

/**
 * As {@link table}, several with the same columns.
 *
 * @param leastRoom in which the last column can be read
 */
export function tables(
  all: readonly Rows[],
  indent: string,
  width: number,
  leastRoom = usualLeastRoom,
): string[] {
  const every = all.flat();
  // Not spread into one call: there may be as many rows as beds times rounds.
  const widest = (of: (row: readonly string[]) => number): number =>
    every.reduce((most, row) => Math.max(most, of(row)), 0);
  const columns = widest((row) => row.length);
  const widths = Array.from({ length: Math.max(0, columns - 1) }, (_, i) =>
    widest((row) => stringWidth(row[i] ?? "")),
  );
  const room = width - indent.length - widths.reduce((sum, w) => sum + w + 2, 0);
  const isStacked =
    room < leastRoom && every.some((row) => stringWidth(row[columns - 1] ?? "") > room);
  return all.map((rows) =>
    isStacked ? stackedRows(rows, widths, indent, width) : alignedRows(rows, widths, indent, room),
  );
}

function alignedRows(rows: Rows, widths: readonly number[], indent: string, room: number): string {
  const before = indent.length + widths.reduce((sum, w) => sum + w + 2, 0);
  const last = (row: readonly string[]): string => row[widths.length] ?? "";
  return rows
    .map((row) => {
      const cells = widths.map((w, i) => pad(row[i] ?? "", w) + "  ").join("");
      const lines = wrap(last(row), room);
      return (indent + cells + lines.join(`\n${" ".repeat(before)}`)).trimEnd();
    })
    .join("\n");
}

/** The cells stay in their columns where these fit. */
function stackedRows(rows: Rows, widths: readonly number[], indent: string, width: number): string {
  const inset = `${indent}    `;
  return rows
    .map((row) => {
      const cells = widths.map((_, i) => row[i] ?? "");
      const last = row[widths.length] ?? "";
      const inColumns = (
        indent + cells.map((cell, i) => pad(cell, widths[i] ?? 0)).join("  ")
      ).trimEnd();
      const above =
        stringWidth(inColumns) <= width
          ? inColumns
          : bullet(cells.filter((cell) => cell.trim() !== "").join("  "), width, indent);
      const below = wrap(last, width - inset.length).map((line) => inset + line);
      return [...(above.trim() === "" ? [] : [above]), ...(last === "" ? [] : below)].join("\n");
    })
    .join("\n");
}

/** Breaks a text at blanks so that no line is wider than `width`, where words allow; what is unbroken stays whole. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && stringWidth(line) + 1 + stringWidth(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line].map((one) => one.replaceAll("\u00a0", " "));
}

/** A paragraph with a mark before it and its later lines set in. */
export function bullet(text: string, width: number, mark = "- "): string {
  const inset = " ".repeat(mark.length);
  return wrap(text, width - mark.length)
    .map((line, i) => (i === 0 ? mark : inset) + line)
    .join("\n");
}

function pad(text: string, width: number): string {
  return text + " ".repeat(Math.max(0, width - stringWidth(text)));
}

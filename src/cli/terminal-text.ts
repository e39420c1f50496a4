/** Text of one width: tables, lists, paragraphs. */
import { styleText } from "node:util";
import stringWidth from "string-width";
import type { Shell } from "./shell.js";

export interface TextStyle {
  readonly width: number;
  /** Makes a heading stand out. */
  readonly heading: (text: string) => string;
}

const widthWithoutTerminal = 100;

export function textStyle(shell: Shell): TextStyle {
  return {
    width: Math.max(40, Math.min(shell.columns ?? widthWithoutTerminal, 120)),
    heading: (text) => (shell.color ? styleText("bold", text, { validateStream: false }) : text),
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

/** A heading over a table that is set in. */
export function tabled(title: string, rows: Rows, style: TextStyle): string {
  return `${style.heading(title)}\n${table(rows, "  ", style.width)}`;
}

export type Rows = readonly (readonly string[])[];

const leastRoom = 20;

/**
 * Rows of cells -> aligned lines; the last column wraps to what is left of the width. Where that is
 * too little to read, the last cell goes below the others.
 */
export function table(rows: Rows, indent: string, width: number): string {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns - 1 }, (_, i) =>
    Math.max(0, ...rows.map((row) => stringWidth(row[i] ?? ""))),
  );
  const before = indent.length + widths.reduce((sum, w) => sum + w + 2, 0);
  const room = width - before;
  const last = (row: readonly string[]): string => row[columns - 1] ?? "";
  if (room < leastRoom && rows.some((row) => stringWidth(last(row)) > room))
    return rows
      .map((row) => stacked(row.slice(0, columns - 1), last(row), indent, width))
      .join("\n");
  return rows
    .map((row) => {
      const cells = widths.map((w, i) => pad(row[i] ?? "", w) + "  ").join("");
      const lines = wrap(last(row), room);
      return (indent + cells + lines.join(`\n${" ".repeat(before)}`)).trimEnd();
    })
    .join("\n");
}

function stacked(cells: readonly string[], last: string, indent: string, width: number): string {
  const inset = `${indent}    `;
  const above = bullet(cells.filter((cell) => cell.trim() !== "").join("  "), width, indent);
  const below = wrap(last, width - inset.length).map((line) => inset + line);
  return [...(above.trim() === "" ? [] : [above]), ...(last === "" ? [] : below)].join("\n");
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

import { escape, foldLines } from "ical-generator";
import { legible } from "../legible.js";

/** RFC 5545 section 3.1: no control characters but TAB and the line break; no half letters either. */
export function cleanText(text: string): string {
  return legible(text.replace(/\r\n?/g, "\n"));
}

/** A TEXT value (RFC 5545 section 3.3.11), for the properties that ical-generator prints raw. */
export function textValue(text: string): string {
  return escape(cleanText(text), false);
}

/** The text that a TEXT value stands for. */
export function textOfValue(value: string): string {
  return value.replace(/\\([\\;,nN])/g, (_, char: string) => (/n/i.test(char) ? "\n" : char));
}

/** Content lines as they stand in a file: folded at 75 octets between code points, CRLF after each. */
export function foldedLines(lines: readonly string[]): string {
  return lines.length === 0 ? "" : `${foldLines(lines.join("\r\n"))}\r\n`;
}

/** The content lines of a text that {@link foldedLines} wrote. */
export function unfoldedLines(text: string): string[] {
  return text
    .replace(/\r\n[ \t]/g, "")
    .split("\r\n")
    .slice(0, -1);
}

/** `SUMMARY` of `SUMMARY;LANGUAGE=en:Feed`. */
export function nameOfLine(line: string): string {
  return line.slice(0, line.search(/[;:]/));
}

/** What stands after the colon; colons inside quoted parameters do not count (section 3.1). */
export function valueOfLine(line: string): string {
  return line.replace(/^(?:[^":]|"[^"]*")*:/, "");
}

/** An event's lines without its alarms and its end; other programs put alarms first. */
export function ownLines(lines: readonly string[]): readonly string[] {
  let isOwn = true;
  return lines.filter((line) => {
    if (line === "BEGIN:VALARM") isOwn = false;
    const own = isOwn && line !== "END:VEVENT";
    if (line === "END:VALARM") isOwn = true;
    return own;
  });
}

/** The value of the first line with that name outside the alarms. */
export function valueIn(lines: readonly string[], name: string): string | undefined {
  const line = ownLines(lines).find((l) => nameOfLine(l) === name);
  return line === undefined ? undefined : valueOfLine(line);
}

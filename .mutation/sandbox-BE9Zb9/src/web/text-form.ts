/** Line ends and byte order mark of a file, which no editor shows. */
// @ts-nocheck


const mark = "\ufeff";

/** What is shown of a file's text. */
export function shownText(raw: string): string {
  return linesOf(raw.startsWith(mark) ? raw.slice(1) : raw)
    .map(({ text, end }) => text + (end && "\n"))
    .join("");
}

/**
 * A text that was changed in the editor, in the form of the file that it was opened from: lines above
 * and below the change keep their ends, those between have the end that most lines have.
 */
export function inFormOf(raw: string, text: string): string {
  const head = raw.startsWith(mark) ? mark : "";
  const before = linesOf(raw.slice(head.length));
  const after = linesOf(text);
  const usual = mostUsualEnd(before);
  const most = Math.min(before.length, after.length);
  let above = 0;
  while (above < most && isSame(before[above], after[above])) above++;
  let below = 0;
  while (below < most - above && isSame(before.at(-1 - below), after.at(-1 - below))) below++;
  const lines = after.map(({ text: line, end }, i) => {
    const kept =
      i < above
        ? before[i]
        : i >= after.length - below
          ? before[before.length - after.length + i]
          : undefined;
    return line + (kept?.end ?? (end && usual));
  });
  return head + lines.join("");
}

interface Line {
  readonly text: string;
  /** Empty for the last line of a file that ends without one. */
  readonly end: string;
}

function linesOf(text: string): Line[] {
  return [...text.matchAll(/([^\r\n]*)(\r\n|\r|\n|$)/g)]
    .map(([, line = "", end = ""]) => ({ text: line, end }))
    .filter(({ text: line, end }) => line !== "" || end !== "");
}

function isSame(a: Line | undefined, b: Line | undefined): boolean {
  return a !== undefined && b !== undefined && a.text === b.text && !a.end === !b.end;
}

function mostUsualEnd(lines: readonly Line[]): string {
  const count = (end: string): number => lines.filter((line) => line.end === end).length;
  const [most = "\n"] = ["\n", "\r\n", "\r"].sort((a, b) => count(b) - count(a));
  return most;
}

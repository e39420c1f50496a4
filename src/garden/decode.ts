import type { Problem, Result } from "../problem.js";

/** A hand-written garden is some kilobytes; beyond this it is some other file. */
export const largestGardenBytes = 1_000_000;
/** Of weather, ten years and more. */
export const largestFileBytes = 5_000_000;

/**
 * Bytes of a text file -> its text without a byte order mark; UTF-8 only. Problem codes: `too-large`,
 * `not-text`, `not-utf8`; `largestBytes` is 1 MB unless given.
 */
export function decodeText(
  bytes: Uint8Array,
  file: string,
  largestBytes = largestGardenBytes,
): Result<string> {
  const refuse = (code: string, message: string, mend: string, line = 1): Result<string> => {
    const problem: Problem = { code, file, at: { line, column: 1 }, message, mend };
    return { ok: false, problems: [problem] };
  };
  if (bytes.length > largestBytes)
    return refuse(
      "too-large",
      `the file is larger than ${largestBytes / 1_000_000} MB`,
      "check that it is the garden file; split a very large garden into several files",
    );
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return refuse("not-utf8", "the file is UTF-16, not UTF-8", "save it as UTF-8 in the editor");
  if (bytes.includes(0))
    return refuse(
      "not-text",
      "the file holds zero bytes, so it is no text file",
      "give a text file",
    );
  try {
    return { ok: true, value: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    const line = firstBadLine(bytes);
    return refuse(
      "not-utf8",
      `line ${line} holds bytes that are not UTF-8`,
      "save the file as UTF-8 in the editor",
      line,
    );
  }
}

function firstBadLine(bytes: Uint8Array): number {
  const strict = new TextDecoder("utf-8", { fatal: true });
  let line = 1;
  for (let start = 0; start <= bytes.length; line++) {
    const newline = bytes.indexOf(0x0a, start);
    const end = newline === -1 ? bytes.length : newline;
    try {
      strict.decode(bytes.subarray(start, end));
    } catch {
      return line;
    }
    start = end + 1;
  }
  return line;
}

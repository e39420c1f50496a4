import { writeText } from "./files.js";
import { exitCodes, type Shell } from "./shell.js";

/** A text to the file asked for, whole or not at all, or to standard output. */
export async function giveText(
  text: string,
  out: string | undefined,
  shell: Shell,
): Promise<number> {
  if (out === undefined || out === "-") shell.stdout(text);
  else shell.stderr(`${out}: ${await writeText(out, text)}\n`);
  return exitCodes.fine;
}

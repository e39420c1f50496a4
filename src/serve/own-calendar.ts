/** The calendar file that a garden names as its own: one state, whoever publishes. */
import { readFile } from "node:fs/promises";
import { writeWhole } from "../write-whole.js";
import type { OwnCalendar } from "./garden-source.js";
import { troubleLine, troubleOf } from "./system-trouble.js";

/** Writes it where it says something new. Gives lines for the terminal; a file that changed meanwhile stays. */
export async function writeOwn(
  own: OwnCalendar | undefined,
  calendar: string,
): Promise<readonly string[]> {
  if (own === undefined || (own.bytes !== undefined && Buffer.from(calendar).equals(own.bytes)))
    return [];
  const { path } = own;
  try {
    await writeWhole(path, calendar, {
      beforeReplacing: async () => {
        const now = await readFile(path).catch(() => undefined);
        if (now === undefined ? own.bytes !== undefined : !now.equals(own.bytes ?? Buffer.of()))
          throw new Changed();
      },
    });
    return [];
  } catch (error) {
    return error instanceof Changed
      ? [`${path} was changed meanwhile by someone else; it is read again`]
      : [troubleLine(troubleOf(error, path))];
  }
}

class Changed extends Error {}

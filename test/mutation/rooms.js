import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** The rooms that a dose, a day or the past goes through, or those that `ROOMS` names. */
export const mutatedRooms = (
  process.env.ROOMS ?? "days,cans,stock,stages,rules,calendar,log"
).split(",");

const linesOfBlock = 25;

/** Files as Stryker takes them; with `EVERY=8` one block of lines in eight, spread evenly. */
export function mutatedLines(every = Number(process.env.EVERY ?? 1)) {
  const files = mutatedRooms.flatMap((room) =>
    readdirSync(join("src", room), { recursive: true })
      .filter((name) => name.endsWith(".ts"))
      .map((name) => join("src", room, name))
      .sort(),
  );
  if (every === 1) return files;
  const blocks = files.flatMap((file) => {
    const lines = readFileSync(file, "utf8").split("\n").length;
    const count = Math.ceil(lines / linesOfBlock);
    return Array.from(
      { length: count },
      (_, i) => `${file}:${i * linesOfBlock + 1}-${(i + 1) * linesOfBlock}`,
    );
  });
  return blocks.filter((_, i) => i % every === Math.floor(every / 2));
}

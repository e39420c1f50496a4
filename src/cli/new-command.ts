import { fileURLToPath } from "node:url";
import { loadTables, loadUsZones } from "../tables.js";
import { exists, writeText } from "./files.js";
import { CommandError, exitCodes, type Shell, wrongUsage } from "./shell.js";
import { starterGarden, starterProblem } from "./starter.js";

export interface NewOptions {
  readonly name: string;
  readonly timezone?: string;
}

/** Writes a starter garden file; never over a file that is there. */
export async function newCommand(
  file: string | undefined,
  options: NewOptions,
  shell: Shell,
): Promise<number> {
  const { name, timezone = shell.localTimezone } = options;
  if (name.trim() === "" || /[\n\r"\\]/.test(name))
    throw wrongUsage("--name is one line of text without quotes");
  const problem = starterProblem(timezone);
  if (problem !== undefined) throw wrongUsage(problem);
  const text = starterGarden({
    name,
    timezone,
    today: shell.today(timezone),
    zoneHalves: loadTables().zoneHalves,
    amounts: loadUsZones().has(timezone.toLowerCase()) ? "us" : "metric",
    schemaPath: fileURLToPath(new URL("../../schemas/garden.schema.json", import.meta.url)),
  });
  if (file === undefined || file === "-") {
    shell.stdout(text);
    return exitCodes.fine;
  }
  if (await exists(file))
    throw new CommandError(
      exitCodes.io,
      `${file}: there is such a file already: choose another name, or remove it first`,
    );
  await writeText(file, text);
  shell.stderr(`${file}: written; change it to your garden, then run \`feedround plan ${file}\`\n`);
  return exitCodes.fine;
}

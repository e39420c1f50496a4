import { parse } from "node:path";
import { fileURLToPath } from "node:url";
import type { Day } from "../dates.js";
import { loadTables, loadUsZones } from "../tables.js";
import { exists, shownName, writeText } from "./files.js";
import { nextYearFile } from "./next-year.js";
import { reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell, wrongUsage } from "./shell.js";
import { starterGarden, starterProblem } from "./starter.js";

export interface NewOptions {
  readonly name?: string;
  readonly timezone?: string;
  readonly from?: string;
  readonly today?: Day;
}

/** Writes a starter garden file, or that of the next year; never over a file that is there. */
export async function newCommand(
  file: string | undefined,
  options: NewOptions,
  shell: Shell,
): Promise<number> {
  const { from, name, timezone, today } = options;
  if (from === undefined) {
    const code = await write(starter(options, file, shell), file, shell);
    tellNext("change it to your own garden", file, shell);
    return code;
  }
  if (name !== undefined || timezone !== undefined)
    throw wrongUsage(
      "--from takes name and time zone from that garden: leave out --name and --timezone",
    );
  const next = await nextYearFile(from, today, shell);
  if (!next.ok) return reportProblems(next.problems, {}, shell);
  const code = await write(next.value.text, file, shell);
  shell.stderr(next.value.told.map((line) => `${line}\n`).join(""));
  tellNext(next.value.first, file, shell);
  return code;
}

/** The one thing to do with a file that was written. */
function tellNext(what: string, file: string | undefined, shell: Shell): void {
  if (file === undefined || file === "-") return;
  shell.stderr(`Next: ${what}, then run \`feedround check ${file}\`\n`);
}

function starter(
  { name = "My garden", today, ...options }: NewOptions,
  file: string | undefined,
  shell: Shell,
): string {
  const { timezone = shell.localTimezone() } = options;
  if (name.trim() === "" || /[\n\r"\\]/.test(name))
    throw wrongUsage("--name is one line of text without quotes");
  const problem = starterProblem(timezone);
  if (problem !== undefined) throw wrongUsage(problem);
  return starterGarden({
    name,
    timezone,
    today: today ?? shell.today(timezone),
    calendarFile: `${file === undefined || file === "-" ? "garden" : parse(file).name}.ics`,
    zoneHalves: loadTables().zoneHalves,
    amounts: loadUsZones().has(timezone.toLowerCase()) ? "us" : "metric",
    schemaPath: fileURLToPath(new URL("../../schemas/garden.schema.json", import.meta.url)),
  });
}

async function write(text: string, file: string | undefined, shell: Shell): Promise<number> {
  if (file === undefined || file === "-") {
    shell.stdout(text, "document");
    return exitCodes.fine;
  }
  if (await exists(file))
    throw new CommandError(
      exitCodes.io,
      `${shownName(file)}: there is such a file already: choose another name, or remove it first`,
    );
  await writeText(file, text, shell);
  shell.stderr(`${shownName(file)}: written\n`);
  return exitCodes.fine;
}

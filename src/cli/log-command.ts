import type { GardenFile } from "../compiled/garden-file.js";
import { decodeText, editGarden } from "../garden/index.js";
import { gardenOfText } from "../plan-garden.js";
import type { Result } from "../problem.js";
import { loadTables } from "../tables.js";
import { readBytes, whileLocked, writeText } from "./files.js";
import { loadGardenText, tellIfBehind } from "./load.js";
import { stepWish, undoWish } from "./log-batch.js";
import { feedingWish } from "./log-feeding.js";
import type { LogJob, LogWish } from "./log-job.js";
import { checkLogUsage, type LogOptions } from "./log-options.js";
import { logText } from "./log-text.js";
import { reportProblems, withMend } from "./report.js";
import { exitCodes, type Shell } from "./shell.js";
import { textStyle } from "./terminal-text.js";

/** Writes down what was given or done; the file is changed only when the garden with it has no problems. */
export async function logCommand(file: string, options: LogOptions, shell: Shell): Promise<number> {
  checkLogUsage(file, options);
  const work = (): Promise<number> => writeLog(file, options, shell);
  return options.dryRun ? work() : whileLocked(file, shell, work);
}

async function writeLog(file: string, options: LogOptions, shell: Shell): Promise<number> {
  const bytes = await readBytes(file, shell);
  const text = decodeText(bytes, file);
  if (!text.ok) return reportProblems(text.problems, {}, shell);
  const read = gardenOfText(text.value, file, loadTables());
  if (!read.ok) return reportProblems(read.problems, {}, shell);
  const { garden, source } = read.value;
  const today = options.today ?? shell.today(garden.timezone);
  const on = options.on ?? today;
  // The file has been validated.
  const written = source.value as GardenFile;
  const job = { file, text: text.value, garden, written, today, on, options };

  const wish = await wishOf(job, shell);
  if (!wish.ok) return reportProblems(wish.problems, {}, shell);
  const { edits, already = "", remarks = [], entries = [] } = wish.value;
  if (edits.length === 0) {
    shell.stderr(`${file}: ${already}; nothing was written\n`);
    return exitCodes.fine;
  }
  for (const remark of remarks) shell.stderr(`${file}: ${remark}\n`);
  const changed = editGarden(text.value, file, edits);
  if (!changed.ok) return reportProblems(changed.problems, {}, shell);
  const after = await loadGardenText(changed.value.text, file, shell, { today });
  if (!after.ok) {
    reportProblems(after.problems, {}, shell);
    shell.stderr(`${file}: nothing was written; the places above are those of the file with it\n`);
    return exitCodes.problems;
  }
  if (!options.dryRun) {
    const mark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? "\ufeff" : "";
    await writeText(file, mark + changed.value.text, shell, bytes);
  }
  for (const warning of after.value.plan.warnings)
    if (warning.code === "batch-unknown" && entries.some((e) => e.on === warning.day && e.batch))
      shell.stderr(`${withMend(warning)}\n`);
  const isDryRun = options.dryRun ?? false;
  shell.stdout(logText(wish.value, after.value, today, isDryRun, textStyle(shell)));
  if (!isDryRun) tellIfBehind(file, after.value, shell);
  shell.stderr(`${file}: ${isDryRun ? "nothing was written, as asked" : "written"}\n`);
  return exitCodes.fine;
}

async function wishOf(job: LogJob, shell: Shell): Promise<Result<LogWish>> {
  const { undo, step, batch } = job.options;
  if (undo) return undoWish(job, shell);
  return step !== undefined && batch !== undefined
    ? stepWish(job, batch, step, shell)
    : feedingWish(job, shell);
}

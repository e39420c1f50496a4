import type { Result } from "../problem.js";
import { given } from "../values.js";
import { shownName } from "./files.js";
import { tellIfBehind } from "./load.js";
import { stepWish, undoWish } from "./log-batch.js";
import { feedingWish } from "./log-feeding.js";
import type { CommandWish, LogJob } from "./log-job.js";
import { checkLogUsage, type LogOptions, namesOnOneLine } from "./log-options.js";
import { seenWish } from "./log-seen.js";
import { logText } from "./log-text.js";
import { reportProblems } from "./report.js";
import { exitCodes, type Shell } from "./shell.js";
import { textStyle } from "./terminal-text.js";
import { type LogOutcome, unknownBatches, writeLog } from "./write-log.js";

/** Writes down what was given or done; the file is changed only when the garden with it has no problems. */
export async function logCommand(file: string, asked: LogOptions, shell: Shell): Promise<number> {
  const options = namesOnOneLine(asked);
  checkLogUsage(file, options);
  const { dryRun: isDryRun = false } = options;
  const outcome = await writeLog<CommandWish>(
    file,
    {
      wish: (now) => {
        const today = options.today ?? shell.today(now.garden.timezone);
        return wishOf({ ...now, today, on: options.on ?? today, options }, shell);
      },
      plan: given({ today: options.today }),
      isDryRun,
    },
    shell,
  );
  return tellOutcome(file, outcome, isDryRun, shell);
}

function tellOutcome(
  file: string,
  outcome: LogOutcome<CommandWish>,
  isDryRun: boolean,
  shell: Shell,
): number {
  const tell = (line: string): void => {
    shell.stderr(`${shownName(file)}: ${line}\n`);
  };
  switch (outcome.kind) {
    case "refused":
      reportProblems(outcome.problems, {}, shell);
      if (outcome.isOfNewText)
        tell("nothing was written; the places above are those of the file with it");
      return exitCodes.problems;
    case "nothing":
      tell(`${outcome.wish.already ?? ""}; nothing was written`);
      return exitCodes.fine;
    case "written": {
      const { wish, after } = outcome;
      wish.remarks?.forEach(tell);
      for (const line of unknownBatches(outcome)) shell.stderr(`${line}\n`);
      shell.stdout(logText(wish, after, isDryRun, textStyle(shell)));
      if (!isDryRun) tellIfBehind(file, after, shell);
      tell(isDryRun ? "nothing was written, as asked" : "written");
      return exitCodes.fine;
    }
  }
}

async function wishOf(job: LogJob, shell: Shell): Promise<Result<CommandWish>> {
  const { undo, step, batch, sign, stage } = job.options;
  if (undo) return undoWish(job, shell);
  if (sign !== undefined || stage !== undefined) return { ok: true, value: seenWish(job) };
  return step !== undefined && batch !== undefined
    ? stepWish(job, batch, step, shell)
    : feedingWish(job, shell);
}

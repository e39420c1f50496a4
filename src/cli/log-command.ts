import type { Day } from "../dates.js";
import { addToLog, decodeText, type NewLogEntry, parseQuantity } from "../garden/index.js";
import { entriesOfDay } from "../log/index.js";
import { gardenOfText } from "../plan-garden.js";
import type { Result } from "../problem.js";
import type { Plan } from "../season/index.js";
import { loadTables } from "../tables.js";
import { given } from "../values.js";
import { dayText } from "../words/index.js";
import { readBytes, whileLocked, writeText } from "./files.js";
import { type LoadedGarden, loadGardenText } from "./load.js";
import { reportProblems } from "./report.js";
import { exitCodes, type Shell, wrongUsage } from "./shell.js";
import { tabled, textStyle } from "./terminal-text.js";

interface LogOptions {
  readonly on?: Day;
  readonly planting?: string;
  readonly bed?: string;
  readonly stock?: string;
  readonly batch?: string;
  readonly feed?: string;
  readonly dryRun?: true;
  readonly today?: Day;
}

/** Writes down what was given; the file is changed only when the garden with it has no problems. */
export async function logCommand(file: string, options: LogOptions, shell: Shell): Promise<number> {
  checkUsage(file, options);
  const work = (): Promise<number> => writeLog(file, options, shell);
  return options.dryRun ? work() : whileLocked(file, shell, work);
}

async function writeLog(file: string, options: LogOptions, shell: Shell): Promise<number> {
  const bytes = await readBytes(file, shell);
  const text = decodeText(bytes, file);
  if (!text.ok) return reportProblems(text.problems, {}, shell);
  const read = gardenOfText(text.value, file, loadTables());
  if (!read.ok) return reportProblems(read.problems, {}, shell);
  const today = options.today ?? shell.today(read.value.garden.timezone);
  const on = options.on ?? today;

  const entries = await entriesFor(text.value, file, on, options, shell);
  if (!entries.ok) return reportProblems(entries.problems, {}, shell);
  if (entries.value.length === 0) {
    shell.stderr(`${file}: the log holds the round of ${on} already; nothing was written\n`);
    return exitCodes.fine;
  }
  const changed = addToLog(text.value, file, entries.value);
  if (!changed.ok) return reportProblems(changed.problems, {}, shell);
  const after = await loadGardenText(changed.value, file, shell, { today });
  if (!after.ok) {
    reportProblems(after.problems, {}, shell);
    shell.stderr(`${file}: nothing was written; the places above are those of the file with it\n`);
    return exitCodes.problems;
  }
  if (!options.dryRun) {
    const mark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? "\ufeff" : "";
    await writeText(file, mark + changed.value, bytes);
  }
  shell.stdout(writtenText(entries.value, after.value, today, options.dryRun ?? false, shell));
  shell.stderr(`${file}: ${options.dryRun ? "nothing was written, as asked" : "written"}\n`);
  return exitCodes.fine;
}

function checkUsage(file: string, { planting, bed, stock, batch, feed }: LogOptions): void {
  if (file === "-")
    throw wrongUsage("a log is written into a garden file, not to standard input: give the file");
  if (planting !== undefined && bed !== undefined)
    throw wrongUsage("--planting and --bed: give one of the two");
  if (feed !== undefined && batch !== undefined)
    throw wrongUsage("--batch is of the calcium feed, not of another: leave out --batch or --feed");
  if (stock === undefined) return;
  if (planting === undefined && bed === undefined && feed === undefined)
    throw wrongUsage(
      "--stock goes with --planting or --bed; without them the plan's own amounts are written down",
    );
  const amount = parseQuantity(stock, "volume", { units: loadTables().units, amounts: "metric" });
  if (!amount.ok) throw wrongUsage(`--stock: ${amount.message}: ${amount.mend}`);
}

/** Empty when the log holds all of the round already. */
async function entriesFor(
  text: string,
  file: string,
  on: Day,
  options: LogOptions,
  shell: Shell,
): Promise<Result<readonly NewLogEntry[]>> {
  const { planting, bed, stock, batch, feed } = options;
  const named = given({ planting, bed });
  const spaced = stock?.trim().replace(/(?<=\d)(?=[^\d\s./])/, " ");
  const entry: NewLogEntry = { on, ...named, ...given({ stock: spaced, batch, feed }) };
  if (stock !== undefined || feed !== undefined) return { ok: true, value: [entry] };

  const then = await loadGardenText(text, file, shell, { asOf: on });
  if (!then.ok) return then;
  const planned = entriesOfDay(then.value.plan, on, named);
  if (planned.length === 0) return nothingPlanned(entry, then.value.plan);
  if (batch !== undefined) return { ok: true, value: planned.map((e) => ({ ...e, batch })) };
  if (planned.some((e) => e.batch === undefined))
    shell.stderr(
      `${file}: no bottle in it held enough stock on ${on}: list the batch under \`stock:\`, or name it with --batch\n`,
    );
  return { ok: true, value: planned };
}

function nothingPlanned(entry: NewLogEntry, plan: Plan): Result<readonly NewLogEntry[]> {
  if (entry.planting !== undefined || entry.bed !== undefined) return { ok: true, value: [entry] };
  const fed = plan.rounds.filter((round) => round.beds.length > 0);
  if (fed.some((round) => round.day === entry.on)) return { ok: true, value: [] };
  const near = [
    fed.findLast((round) => round.day < entry.on),
    fed.find((round) => round.day > entry.on),
  ].flatMap((round) => round?.day ?? []);
  throw wrongUsage(
    `no round is planned on ${entry.on}${near.length > 0 ? `; the nearest are on ${near.join(" and ")}` : ""}: give --on with its day, or say with --planting or --bed what was fed`,
  );
}

/** What was written, and when each planting is due again. */
function writtenText(
  entries: readonly NewLogEntry[],
  { garden, plan }: LoadedGarden,
  today: Day,
  isDryRun: boolean,
  shell: Shell,
): string {
  const style = textStyle(shell);
  const rows = entries.map((e) => [
    e.on,
    e.planting ?? e.bed ?? "all",
    e.feed ?? e.stock ?? "no amount",
    [e.feed === undefined ? "" : (e.stock ?? ""), e.batch ?? "", e.route ?? ""]
      .filter(Boolean)
      .join(", "),
  ]);
  const isMeant = (id: string, bed: string): boolean =>
    entries.some(
      (e) =>
        (e.planting === undefined || e.planting === id) && (e.bed === undefined || e.bed === bed),
    );
  const feed = entries[0]?.feed;
  const due =
    feed === undefined
      ? plan.plantings
          .filter((p) => p.fed && isMeant(p.id, p.bed))
          .map((p) => [p.id, nextFeeding(plan, p.id, today)])
      : [[feed, nextFeed(plan, feed, today)]];
  const notes = plan.notes.filter(
    (note) => note.code === "log" && entries.some((e) => e.on === note.day),
  );
  return [
    tabled(`${isDryRun ? "To be written" : "Written"} into the log of ${garden.name}`, rows, style),
    ...(due.length === 0 ? [] : [tabled("Due next", due, style)]),
    ...notes.map((note) => note.message),
    "",
  ].join("\n");
}

function nextFeeding(plan: Plan, planting: string, today: Day): string {
  for (const round of plan.rounds) {
    if (round.day < today) continue;
    const feeding = round.beds
      .flatMap((bed) => bed.mixes.filter((mix) => !mix.given).flatMap((mix) => mix.feedings))
      .find((f) => f.planting === planting);
    if (feeding !== undefined)
      return `${dayText(round.day)} (between ${feeding.window.earliest} and ${feeding.window.latest})`;
  }
  return "no more in this season";
}

function nextFeed(plan: Plan, feed: string, today: Day): string {
  const round = plan.rounds.find(
    ({ day, feeds }) => day >= today && feeds?.some((mix) => mix.feed === feed && !mix.given),
  );
  return round === undefined ? "no more in this season" : dayText(round.day);
}

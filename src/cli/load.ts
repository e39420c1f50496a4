/** A garden file on disk -> garden and plan, or problems with their places. */
import { dirname, join } from "node:path";
import { inflateSync } from "node:zlib";
import { readersMend } from "../calendar/index.js";
import type { Day } from "../dates.js";
import { asksForNormals, type PlaceSources } from "../garden-place.js";
import { decodeText, type Garden, type SourceFile } from "../garden/index.js";
import { dayOfFile, gardenOn, keepsLog } from "../log/index.js";
import { gardenOfText, planOfGarden, type ReadGarden, workedOut } from "../plan-garden.js";
import type { PlanOptions } from "../plan.js";
import { type Problem, problemLines, type Result } from "../problem.js";
import type { Plan } from "../season/index.js";
import type { Published } from "../published/index.js";
import { loadNormals, loadTables } from "../tables.js";
import { given } from "../values.js";
import type { EarlierFile } from "./earlier-files.js";
import { readBytes, shownName } from "./files.js";
import { namedTexts } from "./named-texts.js";
import { type PublishedState, publishedState, type StateWishes } from "./published-state.js";
import type { Shell } from "./shell.js";

export interface LoadedGarden {
  readonly source: SourceFile;
  readonly garden: Garden;
  readonly plan: Plan;
  /** The calendar that tells what was published, where there is one. */
  readonly earlier?: EarlierFile;
  /** It tells other rounds to come than the plan: what it tells will count as given. */
  readonly isBehind: boolean;
}

export interface LoadOptions
  extends Pick<Partial<PlanOptions>, "today" | "extraRounds">, StateWishes {
  /** Without a log, plan as of the day that the file speaks of, so that the clock changes nothing. */
  readonly isTimeless?: boolean;
  /** Plan from this day as the file would have stood then, without what was written down since. */
  readonly asOf?: Day;
  /** What the plan becomes is published: a calendar that is damaged or another garden's is refused. */
  readonly isForWriting?: boolean;
  /** Plan as if nobody kept a calendar of the garden. */
  readonly isUnpublished?: true;
}

/** Throws CommandError (exit code 3) only for what cannot be read at all. */
export async function loadGarden(
  path: string,
  shell: Shell,
  options: LoadOptions = {},
): Promise<Result<LoadedGarden>> {
  const text = decodeText(await readBytes(path, shell), shownName(path));
  return text.ok ? loadGardenText(text.value, path, shell, options) : text;
}

/** As {@link loadGarden}, of a text that is to stand in that file. */
export async function loadGardenText(
  text: string,
  path: string,
  shell: Shell,
  options: LoadOptions = {},
): Promise<Result<LoadedGarden>> {
  const read = gardenOfText(text, shownName(path), loadTables());
  return read.ok ? planRead(read.value, path, shell, options) : read;
}

/** The same of a garden that has been read. */
export async function planRead(
  read: ReadGarden,
  path: string,
  shell: Shell,
  options: LoadOptions = {},
): Promise<Result<LoadedGarden>> {
  const tables = loadTables();
  const named = await namedTexts(read, path, shell);
  if (!named.ok) return named;
  const sources = { ...named.value, ...(await placeSources(read.garden)) };
  const state = await stateFor(path, read.garden, options, shell);
  if (!state.ok) return state;
  const { today, isTimeless, asOf, extraRounds } = options;
  const { source, garden: whole } = read;
  const garden = asOf === undefined ? whole : gardenOn(whole, asOf);
  const published =
    state.value?.isDaysOnly === true
      ? workedOut(read, sources, tables, state.value.published)
      : state.value?.published;
  const isFree = isTimeless === true && published === undefined && !keepsLog(garden);
  const plan = planOfGarden({ source, garden }, sources, tables, {
    today: asOf ?? today ?? (isFree ? dayOfFile(garden) : shell.today(garden.timezone)),
    ...given({ published, extraRounds }),
  });
  if (!plan.ok) return plan;
  const { earlier } = state.value ?? {};
  const isBehind =
    earlier !== undefined && published !== undefined && tellsOther(published, plan.value);
  return { ok: true, value: { source, garden, plan: plan.value, ...given({ earlier }), isBehind } };
}

/** What the garden's place is made of beside its file, read where it asks for it. */
async function placeSources(garden: Garden): Promise<PlaceSources> {
  return asksForNormals(garden) ? { normals: await loadNormals(inflated) } : {};
}

/** Quicker than what a page has, too. */
function inflated(base64: string): Uint8Array {
  return inflateSync(Buffer.from(base64, "base64"));
}

function tellsOther(before: Published, { published, today }: Plan): boolean {
  const ahead = ({ rounds }: Published): string =>
    JSON.stringify(
      rounds
        .filter(({ day }) => day >= today)
        .map(({ day, mixes }) => [
          day,
          mixes.flatMap(({ route, fed }) => fed.map((one) => `${one.planting}/${route}`)).sort(),
        ]),
    );
  return ahead(before) !== ahead(published);
}

/** One line for the terminal, where the calendar that the garden file names is behind it. */
export function tellIfBehind(
  path: string,
  { garden: { calendarFile }, isBehind }: LoadedGarden,
  shell: Shell,
): void {
  if (!isBehind || calendarFile === undefined) return;
  const calendar = join(dirname(path), calendarFile);
  shell.stderr(
    `${calendar} tells other rounds than this plan, and what it tells counts as given when its day is past: write it again with \`feedround calendar ${path} --out ${calendar}\`\n`,
  );
}

/** A calendar that cannot be used is told of; only who would write it anew is refused. */
async function stateFor(
  path: string,
  garden: Garden,
  options: LoadOptions,
  shell: Shell,
): Promise<Result<PublishedState | undefined>> {
  if (options.isUnpublished === true) return { ok: true, value: undefined };
  const state = await publishedState(path, garden, options, shell);
  if (state.ok || options.isForWriting === true) return state;
  const problems = state.problems.map(forReader);
  if (options.keep !== undefined) return { ok: false, problems };
  for (const line of problemLines(problems)) shell.stderr(`${line}\n`);
  return { ok: true, value: undefined };
}

/** The calendar is left as it is: nothing is to be written under another name. */
function forReader(problem: Problem): Problem {
  const isOfCalendar = ["not-a-calendar", "not-ours", "damaged"].includes(problem.code);
  return isOfCalendar ? { ...problem, mend: readersMend } : problem;
}

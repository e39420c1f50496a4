/** What there is to do, in the order of days: rounds, and jobs for the stock. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Amounts, counted, daysAway, shortDay, vesselOf } from "../garden/index.js";
import {
  type AgendaDay,
  agendaOf,
  type CanMix,
  mixesOf,
  type Plan,
  type Round,
} from "../season/index.js";
import { batchName } from "../stock/index.js";
import {
  dayAsks,
  doneWords,
  feedingInRow,
  fillOfWater,
  fromAll,
  fromEach,
  jobInFull,
  missingStock,
  noRound,
  otherFeedInRow,
  plain,
  stockInRow,
  todayAsks,
  tooLittleStock,
} from "../words/index.js";
import { bullet, tables, type TextStyle } from "./terminal-text.js";

/** What of a plan is asked for. */
export interface PlanView {
  /** Days of {@link Plan.rounds} and of the jobs, both ends too. */
  readonly from?: Day;
  readonly to?: Day;
  /** With all that lies before today. */
  readonly past?: boolean;
}

/** What today asks for, then the next day with something to do, and the next round. */
export function firstLines(plan: Plan, style: TextStyle): string[] {
  const { today } = plan;
  const agenda = agendaOf(plan);
  const now = agenda.find(({ day }) => day === today);
  const asked = now && dayAsks(now, plan);
  const ahead = agenda.filter(({ day }) => day > today);
  const [next, round] = [ahead[0], ahead.find((one) => one.round !== undefined)];
  const lines = [
    ...(next === undefined || next === round ? [] : [nextLine("Next", next, plan)]),
    round === undefined ? noRound(plan) : nextLine("Next round", round, plan),
  ];
  const first = bullet(todayAsks(asked, today, plan.garden.amounts), style.width, "");
  return [
    asked === undefined ? first : style.next(first),
    ...lines.map((line) => bullet(line, style.width, "")),
  ];
}

function nextLine(what: string, one: AgendaDay, plan: Plan): string {
  const { today, garden } = plan;
  const day = shortDay(one.day, garden.amounts, today);
  return `${what}, ${day}, ${daysAway(today, one.day)}: ${dayAsks(one, plan) ?? "given already"}`;
}

/** Our choice: a planting with crop and stage stands in one line. */
const roomForWhom = 32;

/** A block for each day; what lies before today in one line, unless it is asked for. */
export function agendaText(
  plan: Plan,
  { from, to, past = false }: PlanView,
  style: TextStyle,
): string {
  const { today } = plan;
  const days = agendaOf(plan).filter(
    ({ day }) => (from === undefined || day >= from) && (to === undefined || day <= to),
  );
  const isShown = ({ day }: AgendaDay): boolean => past || from !== undefined || day >= today;
  const shown = days.filter(isShown);
  const rows = tables(
    shown.map(({ round }) => (round === undefined ? [] : roundRows(round, plan.garden.amounts))),
    "  ",
    style.width,
    roomForWhom,
  );
  const next = shown.find(({ day, round }) => round !== undefined && day >= today)?.day;
  const folded = days.filter((one) => !isShown(one));
  const blocks = [
    ...foldedLine(folded, plan, style),
    ...shown.map((one, i) => dayText(one, rows[i] ?? "", one.day === next, plan, style)),
    ...(plan.rounds.length === 0 ? ["No feedings in these days."] : []),
  ];
  return [style.heading("Rounds, and jobs for the stock"), ...blocks].join("\n\n");
}

/** ``3 rounds before today, all taken as given; `plan --past` shows what is past`` */
function foldedLine(days: readonly AgendaDay[], plan: Plan, style: TextStyle): string[] {
  const rounds = days.flatMap(({ round }) => round ?? []);
  if (rounds.length === 0) return [];
  const count = counted(rounds.length, "round");
  const missed = new Set((plan.missed ?? []).map(({ day }) => day));
  const gaps = missed.size === 0 ? "" : `; something not given on ${counted(missed.size, "day")}`;
  const line = `${count} before today, ${howGiven(rounds)}${gaps}; \`plan --past\` shows what is past`;
  return [style.past(bullet(line, style.width, ""))];
}

function howGiven(rounds: readonly Round[]): string {
  const given = rounds.filter((round) => round.given);
  const untold = given.filter(({ asPublished }) => asPublished);
  // Nobody keeps a calendar or a log.
  if (given.length === 0) return "as planned";
  if (untold.length === rounds.length) return "all taken as given";
  const all = given.length === rounds.length ? "all given" : `${given.length} given`;
  return untold.length === 0 ? all : `${all}, ${untold.length} of them taken as given`;
}

/** Head, jobs, then the rows of the round. */
function dayText(
  { day, round, jobs }: AgendaDay,
  rows: string,
  isNext: boolean,
  plan: Plan,
  style: TextStyle,
): string {
  const { garden, today, stock } = plan;
  const isPast = day < today;
  const time = round?.timeOfDay === undefined ? "" : `, ${round.timeOfDay}`;
  const away = isNext || day === today ? `, ${daysAway(today, day)}` : "";
  const head = `${shortDay(day, garden.amounts, today)}${time}${away}`;
  const toDo =
    stock === undefined
      ? []
      : jobs.map((job) =>
          bullet(jobInFull(plain, job, { ...plan, stock }, batchName), style.width, "  - "),
        );
  const about = round === undefined ? "" : `${doneWords(round)}${bottlesOf(round)}`;
  const short = round?.shortMl === undefined ? "" : `, ${style.warning(`! ${tooLittleStock}`)}`;
  if (isPast) return style.past([head + about, ...toDo, rows].filter(Boolean).join("\n"));
  const shownHead = isNext ? style.next(head) : style.heading(head);
  return [shownHead + about + short, ...toDo, rows].filter(Boolean).join("\n");
}

function bottlesOf(round: Round): string {
  const pours = mixesOf([round]).flatMap((mix) => mix.pours ?? []);
  const bottles = [...new Set(pours.map((pour) => pour.batch))];
  return bottles.length === 0 ? "" : fromAll(bottles);
}

function roundRows(round: Round, amounts: Amounts): string[][] {
  const rows = round.beds.flatMap((bed) =>
    bed.mixes.flatMap((mix, i) => mixRows(mix, i === 0 ? bed.bedName : "", amounts)),
  );
  const feedRows = (round.feeds ?? []).flatMap((feed) =>
    feed.fills.map((fill, i) => [
      i === 0 ? feed.bedName : "",
      fillOfWater(fill, "can"),
      stockInRow(fill),
      i === 0 ? otherFeedInRow(feed, amounts) : "",
    ]),
  );
  return [...rows, ...feedRows];
}

/** A row for each kind of fill: bed, cans, stock in each, and for whom. */
function mixRows(mix: CanMix, bedName: string, amounts: Amounts): string[][] {
  const whom = mix.feedings.map(feedingInRow).join(", ");
  const short = mix.shortMl === undefined ? "" : missingStock(mix.shortMl, amounts);
  return mix.fills.map((fill, i) => [
    i === 0 ? bedName : "",
    fillOfWater(fill, vesselOf(mix.route)),
    stockInRow(fill),
    [...(i === 0 ? [whom, short] : []), fromEach(fill)].filter((text) => text !== "").join("; "),
  ]);
}

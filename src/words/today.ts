/** What a day asks for, in one line. */
import type { Day } from "../dates.js";
import { shortDay } from "../garden/index.js";
import { type AgendaDay, mixesOf, type Plan, type Round } from "../season/index.js";
import { jobInShort } from "./jobs.js";
import { feedTitle, otherFeedsTitle } from "./titles.js";

/** Undefined where nothing is left to do. */
export function dayAsks({ round, jobs }: AgendaDay, plan: Plan): string | undefined {
  const { amounts } = plan.garden;
  const asked = [
    ...(round === undefined || isDone(round) ? [] : roundTitles(round, amounts).map(lowerFirst)),
    ...jobs.map((job) => jobInShort(job, plan)),
  ];
  return asked.length === 0 ? undefined : asked.join("; ");
}

/** Written down; what nobody wrote down is still to be ticked. */
function isDone({ given, asPublished }: Round): boolean {
  return given === true && asPublished === undefined;
}

/** Of its calcium, and of its other feeds. */
export function roundTitles(round: Round, amounts: Plan["garden"]["amounts"]): string[] {
  const [mix, ...mixes] = mixesOf([round]);
  const [feed, ...feeds] = round.feeds ?? [];
  return [
    ...(mix === undefined ? [] : [feedTitle([mix, ...mixes], amounts)]),
    ...(feed === undefined ? [] : [otherFeedsTitle([feed, ...feeds], amounts)]),
  ];
}

/** `Today, Mon 10 May: crush 16 g of shell, stir into the acid` */
export function todayAsks(asked: string | undefined, today: Day, plan: Plan): string {
  const { amounts } = plan.garden;
  return asked === undefined
    ? "Nothing to do today"
    : `Today, ${shortDay(today, amounts)}: ${asked}`;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLocaleLowerCase("en") + text.slice(1);
}

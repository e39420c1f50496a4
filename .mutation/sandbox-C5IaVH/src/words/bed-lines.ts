/** What is out of the usual for a bed in a round: a sign and what it changes, lateness, what was missed. */
// @ts-nocheck

import { type Amounts, shortDate, totalStockText } from "../garden/index.js";
import type { BedRound, CanMix, Feeding, MissedFeedings, Plan, Round } from "../season/index.js";
import { grouped } from "../values.js";
import { stockInEach } from "./cans.js";
import { nameInText } from "./names.js";

/** Each thing a line; made once for all rounds of a plan. */
export type BedLines = (round: Round, bed: BedRound) => readonly string[];

export function bedLines(plan: Plan): BedLines {
  const missed = missedBefore(plan);
  return ({ day }, bed) => [
    ...bed.mixes.flatMap((mix) => [...signLines(plan, bed, mix), ...dueLines(plan, day, bed, mix)]),
    ...(missed.get(`${day}/${bed.bed}`) ?? []).map((one) => missedLine(one, bed, plan)),
  ];
}

/** By the day of the bed's next round and the bed. */
function missedBefore({ missed = [], rounds }: Plan): ReadonlyMap<string, MissedFeedings[]> {
  const byBed = grouped(
    missed.filter(({ why }) => why !== "removed"),
    ({ bed }) => bed,
  );
  const open = new Map([...byBed].map(([bed, those]) => [bed, [...those]]));
  const found = new Map<string, MissedFeedings[]>();
  for (const { day, beds } of rounds)
    for (const { bed } of beds) {
      const waiting = open.get(bed);
      const next = waiting?.findIndex((one) => one.day >= day) ?? 0;
      const before = waiting?.splice(0, next < 0 ? Infinity : next) ?? [];
      if (before.length > 0) found.set(`${day}/${bed}`, before);
    }
  return found;
}

const whyMissed = {
  log: "",
  away: ": away",
  "not-yet-planted": ": not yet planted out",
  "no-stock": ": nothing to pour",
} as const;

/** `not given 26 Jun: away`; named where the bed has others too */
function missedLine({ day, plantings, why }: MissedFeedings, bed: BedRound, plan: Plan): string {
  const { garden, today } = plan;
  const fed = bed.mixes.flatMap(({ feedings }) => feedings.map(({ name }) => name));
  const isOfAll = fed.every((name) => plantings.includes(name));
  const who = isOfAll ? "" : `${plantings.map(nameInText).join(", ")} `;
  const said = why === "removed" ? "" : whyMissed[why];
  return `${who}not given ${shortDate(day, garden.amounts, today)}${said}`;
}

/** `38 mL, was 25: blossom-end rot seen 2 Jul` */
function signLines(plan: Plan, bed: BedRound, mix: CanMix): string[] {
  if (mix.given === true) return [];
  const { amounts } = plan.garden;
  const signed = mix.feedings.filter(({ signs }) => signs !== undefined);
  const together = grouped(signed, (feeding) => JSON.stringify(feeding.signs));
  return [...together.values()].map((feedings) => {
    const [first] = feedings;
    const seen = (first.signs?.seen ?? [])
      .map(({ name, on }) => `${name} seen ${shortDate(on, amounts, plan.today)}`)
      .join(", ");
    const change = changedAmount(plan, mix, first);
    const line = change === undefined ? `${seen}; the amount stays` : `${change}: ${seen}`;
    return named(feedings, bed, line);
  });
}

/** `38 mL, was 25 mL`, of the first cans; undefined where the sign changes nothing that is measured. */
function changedAmount({ rules, garden }: Plan, mix: CanMix, feeding: Feeding): string | undefined {
  const [fill] = mix.fills;
  const rule = rules.find(({ id }) => id === feeding.rule);
  if (fill === undefined || rule === undefined || feeding.signs === undefined) return undefined;
  const usual = rateWithoutSigns(mix, feeding, feeding.signs.levelWithout, rule.highestRateMlPerL);
  const { amounts } = garden;
  const ml = fill.jug?.stockMl ?? fill.stockMl;
  const [now, was] = [ml, (ml * usual) / mix.rateMlPerL].map((one) => totalStockText(one, amounts));
  if (now === undefined || was === undefined || now === was) return undefined;
  return `${fill.jug === undefined ? stockInEach(fill) : now}, was ${sameUnit(was, amounts)}`;
}

/** At the strength of the bottle, never above the rule's highest rate. */
function rateWithoutSigns(
  { rateMlPerL, calciumMgPerL }: CanMix,
  { targetMgPerL, level, baseRateMlPerL }: Feeding,
  levelWithout: number,
  highestRateMlPerL: number,
): number {
  const strengthGPerL = calciumMgPerL / rateMlPerL;
  const wished =
    targetMgPerL === undefined
      ? baseRateMlPerL * levelWithout
      : (targetMgPerL * levelWithout) / level / strengthGPerL;
  return Math.min(wished, highestRateMlPerL);
}

/** Spoons come in several measures; a litre's unit is said already. */
function sameUnit(amount: string, amounts: Amounts): string {
  return amounts === "us" ? amount : amount.replace(/ mL$/, "");
}

/** `late: due by 24 Jun` */
function dueLines(
  { garden, today }: Plan,
  day: Round["day"],
  bed: BedRound,
  mix: CanMix,
): string[] {
  if (mix.given === true) return [];
  const off = mix.feedings.filter(({ inWindow }) => !inWindow);
  const due = ({ window: { earliest, latest } }: Feeding): string =>
    day > latest
      ? `late: due by ${shortDate(latest, garden.amounts, today)}`
      : `early: due from ${shortDate(earliest, garden.amounts, today)}`;
  return [...grouped(off, due)].map(([line, those]) => named(those, bed, line));
}

/** With the names of the plantings where others of the bed are fed too. */
function named(feedings: readonly Feeding[], { mixes }: BedRound, line: string): string {
  if (feedings.length === mixes.flatMap((mix) => mix.feedings).length) return line;
  return `${feedings.map(({ name }) => nameInText(name)).join(", ")}: ${line}`;
}

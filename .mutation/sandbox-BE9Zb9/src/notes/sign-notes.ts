/** What the grower saw on the plants, told: what it changes, for how long, why, and what to do first. */
// @ts-nocheck

import type { FeedingVerdict, Judgement } from "../calcium/index.js";
import type { Crop } from "../crops/index.js";
import { type Day, within } from "../dates.js";
import type { FeedingCourse } from "../days/index.js";
import {
  type Amounts,
  counted,
  decimal,
  type Garden,
  type Planting,
  rateIn,
  rateMeasures,
  rateText,
  shortDate,
  shortDay,
} from "../garden/index.js";
import { isOver, type Sighting, signEffect, type SignEffect } from "../rules/index.js";
import { feedingDaysOf, type PlanNote, type Round } from "../season/index.js";
import type { PlantingLife } from "../stages/index.js";
import { type DryGap, isLongDry } from "../watering/index.js";
import { dryBeforeSign, verdictWords } from "../words/index.js";

interface SignedPlanting {
  readonly planting: Planting;
  /** Absent where the planting is only listed. */
  readonly crop: Crop | undefined;
  readonly life: Pick<PlantingLife, "spans">;
  readonly sightings: readonly Sighting[];
}

interface KnownOfBed {
  /** The longest time without water up to a day, where the bed's watering is told. */
  readonly dryGapUntil: (day: Day) => DryGap | undefined;
  /** Of the planting. */
  readonly verdicts: readonly FeedingVerdict[];
}

/**
 * A note for each sign of the season on a planting; those of another season are told together.
 */
export function signNotes(
  { sightings, planting, crop, life }: SignedPlanting,
  { season, amounts }: Pick<Garden, "season" | "amounts">,
  courses: readonly FeedingCourse[],
  rounds: readonly Round[],
  { dryGapUntil, verdicts }: KnownOfBed,
): PlanNote[] {
  const own = courses.filter((course) => course.planting.id === planting.id);
  const spans = own.flatMap((course) => course.spans);
  const days = feedingDaysOf(rounds, planting.id);
  return sightings
    .filter((sighting) => !isOver(sighting, season))
    .map((sighting) => {
      const effect = signEffect(sighting, sightings, planting, life.spans, spans, days);
      const opened = own
        .filter(({ openedBySignOn }) => openedBySignOn === sighting.seen.on)
        .flatMap(({ route, course: { first, coverTo } }) =>
          feedingDaysOf(rounds, planting.id, route).filter((day) =>
            within(day, { from: first.earliest, to: coverTo }),
          ),
        );
      return {
        ...signNote(sighting, effect, opened, planting, crop, amounts, verdicts),
        advice: firstAdvice(sighting, crop, dryGapUntil(sighting.seen.on), amounts),
      };
    });
}

/** Water comes before anything that is fed, and only what is taken for the sign comes before water. */
function firstAdvice(
  { sign, isKnown }: Sighting,
  crop: Crop | undefined,
  dryGap: DryGap | undefined,
  amounts: Amounts,
): string[] {
  if (crop === undefined || !isKnown) return [...sign.first_advice];
  const found = (sign.water_evidence ?? []).filter(
    ({ crops }) => crops?.includes(crop.key) ?? true,
  );
  return [
    ...(sign.first_in_group?.[crop.group] ?? []),
    ...(dryGap !== undefined && isLongDry(dryGap) ? [dryBeforeSign(dryGap, amounts)] : []),
    ...found.map(({ says }) => says),
    ...sign.first_advice,
  ];
}

/** @param opened days of the feedings that it opened */
function signNote(
  { seen, sign }: Sighting,
  effect: SignEffect,
  opened: readonly Day[],
  planting: Planting,
  crop: Crop | undefined,
  amounts: Amounts,
  verdicts: readonly FeedingVerdict[],
): Omit<PlanNote, "advice"> {
  const what = `${planting.id} (${planting.cropWord}): ${sign.name} seen on ${shortDay(seen.on, amounts)}`;
  const reasons = [
    `${openedText(opened, amounts)}${effectText(effect, amounts)}.`,
    sign.reason,
    effect.kind === "rate" ? sign.change_reason : undefined,
    reckoned(effect, planting, amounts),
    ...(isMore(effect, opened) ? againstMore(verdicts, amounts) : []),
  ];
  return {
    code: "sign",
    sign: sign.name,
    planting: planting.id,
    day: seen.on,
    message:
      effect.kind === "unknown-on-crop"
        ? `${what}, though it is not known on ${crop?.name ?? planting.cropWord}: look again; the feed stays as it is`
        : `${what}; ${reasons.filter((reason) => reason !== undefined).join(" ")}`,
  };
}

function isMore(effect: SignEffect, opened: readonly Day[]): boolean {
  return opened.length > 0 || (effect.kind === "rate" && effect.toMlPerL > effect.fromMlPerL);
}

/** What speaks against feeding more. */
function againstMore(verdicts: readonly FeedingVerdict[], amounts: Amounts): string[] {
  return verdicts
    .filter(({ feeds, judgement: { kind } }) => feeds && speaksAgainst(kind))
    .map(
      (verdict) =>
        `But look at the verdict before you feed more. ${verdictWords(verdict, amounts)}`,
    );
}

function speaksAgainst(kind: Judgement["kind"]): boolean {
  return kind !== "might-help" && kind !== "cannot-tell";
}

function openedText(days: readonly Day[], amounts: Amounts): string {
  if (days.length === 0) return "";
  return `its feeding had ended, so it is fed ${counted(days.length, "more time")}, on ${days.map((day) => shortDay(day, amounts)).join(" and ")}; `;
}

/** A rule's rate is of stock of its own strength; a grower's own is of whatever is in the bottle. */
function reckoned(
  { kind }: SignEffect,
  { rateMlPerL }: Planting,
  amounts: Amounts,
): string | undefined {
  if (rateMlPerL !== undefined || (kind !== "rate" && kind !== "at-highest")) return undefined;
  return `These ${rateMeasures[amounts].stock} are of the rule's stock: the cans follow your bottle's strength.`;
}

function effectText(effect: SignEffect, amounts: Amounts): string {
  switch (effect.kind) {
    case "unknown-on-crop":
      return "the feed stays as it is";
    case "not-fed":
      return "it is not fed, so no rate changes";
    case "same-rate":
      return "the rate stays as it is";
    case "no-stage":
      return `until ${shortDate(effect.until, amounts)} it is in no stage in which that changes the feed, so the rate stays as it is`;
    case "no-feeding":
      return `no feeding comes until ${shortDate(effect.until, amounts)}, so no rate changes`;
    case "at-highest":
      return `the rate stays at ${rateText(effect.rateMlPerL, amounts)}, the rule's highest`;
    case "rate": {
      const { fromMlPerL, toMlPerL, isHighest, from, until } = effect;
      const way = toMlPerL > fromMlPerL ? "rises" : "falls";
      const highest = isHighest ? ", the rule's highest," : "";
      return `the rate ${way} from ${decimal(rateIn(amounts, fromMlPerL), 2)} to ${rateText(toMlPerL, amounts)}${highest} from ${shortDate(from, amounts)} until ${shortDate(until, amounts)}`;
    }
  }
}

/** The days on which warmth brings the stages of a planting. */
// @ts-nocheck

import { dayLengthH, type Thresholds, type Warmer } from "../climate/index.js";
import type { Crop, CropWarmth, StageLengths } from "../crops/index.js";
import { addDays, type Day, daysBetween, eachDay } from "../dates.js";
import { type Planting, shortDate } from "../garden/index.js";
import { given } from "../values.js";
import type { Begin } from "./begin.js";
import type { Start } from "./calendar-starts.js";
import { type HeatMark, heatScale } from "./heat-scale.js";
import { offsetDays } from "./lengths.js";
import type { Here, Place } from "./place.js";
import type { StageWarmth } from "./stage-span.js";

/** When warmth brings a stage; without `day` it doesn't before the season's end. */
export type WarmDay = Omit<StageWarmth, "calendar" | "isFollowed" | "isHeldBack">;

/** A day from which degree days are counted, and where on the crop's scale it stands. */
interface HeatZero {
  readonly day: Day;
  readonly mark: Pick<HeatMark, "degreeDays" | "least" | "most">;
  readonly what: string;
  readonly indoors?: NonNullable<StageWarmth["indoors"]>;
}

type WarmCrop = Crop & { readonly warmth: CropWarmth };
type WarmPlace = Pick<Place, "amounts" | "season"> & { readonly here: Here };

/**
 * For each stage of the crop's course; undefined for those of which warmth says nothing. From a stage
 * that was seen it counts on.
 *
 * @param starts by the calendar, moved by what was seen
 */
export function warmDays(
  planting: Planting,
  crop: WarmCrop,
  [begin, lengths, scale]: readonly [Begin, StageLengths, number],
  starts: readonly Start[],
  { amounts = "metric", here, season }: WarmPlace,
): (WarmDay | undefined)[] {
  const said = (day: Day): string => shortDate(day, amounts);
  const { marks, from } = heatScale(crop, crop.warmth, lengths, scale, here.rowBandShare);
  const { stages } = crop.course;
  const whole = heatZero(planting, crop, begin, lengths, here, marks, starts, from, said);

  const { errorC } = here.climate;
  const zeros = stages.map(({ stage }, i): HeatZero | undefined => {
    const seen = planting.seen.find((sighting) => sighting.stage === stage)?.on;
    const mark = marks[i];
    return (
      seen &&
      mark && { day: seen, mark, what: `${stage.replaceAll("-", " ")} seen on ${said(seen)}` }
    );
  });
  return marks.map((mark, i) => {
    const zero = zeros.slice(0, i).findLast((one) => one !== undefined) ?? whole;
    // What lies behind, in the tray or at the very beginning, has its day by the calendar.
    if (mark === undefined || mark.degreeDays <= zero.mark.degreeDays) return undefined;
    const reached = (key: keyof HeatZero["mark"], byC: number): Day | undefined =>
      reachedBy(mark[key] - zero.mark[key], zero.day, mark.dayLengthH, byC);
    return {
      ...given({
        day: reached("degreeDays", 0),
        earliest: reached("least", errorC),
        latest: reached("most", -errorC),
      }),
      degreeDays: Math.round(mark.degreeDays - zero.mark.degreeDays),
      baseC: crop.warmth.baseC,
      after: zero.what,
      ...given({ indoors: zero.indoors }),
      sources: mark.sources,
    };
  });

  function reachedBy(
    degreeDays: number,
    fromDay: Day,
    dayLength: number | undefined,
    meansWarmerC: number,
  ): Day | undefined {
    const warmer: Warmer[] = [...here.cover, { byC: meansWarmerC, onMeansOnly: true }];
    const span = { from: fromDay, until: season.to };
    const warm = here.warmth.reached(Math.max(0, degreeDays), span, crop.warmth, warmer);
    if (warm === undefined || dayLength === undefined) return warm;
    const { latitudeDeg } = here.climate;
    const isLong = (day: Day): boolean => dayLengthH(day, latitudeDeg) >= dayLength;
    for (const day of eachDay({ from: warm, to: season.to })) if (isLong(day)) return day;
    return undefined;
  }
}

/** Where the crop's scale begins. */
function heatZero(
  { sown, transplanted, raisedAtC: own }: Planting,
  crop: WarmCrop,
  begin: Begin,
  lengths: StageLengths,
  here: Here,
  marks: readonly (HeatMark | undefined)[],
  starts: readonly Start[],
  from: string,
  said: (day: Day) => string,
): HeatZero {
  const none = { degreeDays: 0, least: 0, most: 0 };
  const stageAt = crop.course.stages.findIndex(({ stage }) => stage === from);
  const stageStart = starts[stageAt];
  if (stageStart !== undefined)
    return {
      day: stageStart.day,
      mark: none,
      what: `${from.replaceAll("-", " ")} on ${said(stageStart.day)}`,
    };
  const age = crop.transplantAgeDays;
  const plantedOut =
    transplanted ?? (crop.countedFrom === "transplanting" ? begin.day : addDays(begin.day, age));
  if (from === "transplanting")
    return {
      day: plantedOut,
      mark: none,
      what:
        transplanted === undefined && crop.countedFrom === "sowing"
          ? `its usual age at planting out, on ${said(plantedOut)}`
          : `planting out on ${said(plantedOut)}`,
    };
  if (transplanted === undefined)
    return { day: begin.day, mark: none, what: `sowing on ${said(begin.day)}` };
  const indoorDays = Math.min(
    age,
    sown === undefined ? age : Math.max(0, daysBetween(sown, transplanted)),
  );
  const raisedAtC = own ?? here.raisedAtC;
  const credit = Math.min(
    indoorDays * degreeDaysAt(raisedAtC, crop.warmth),
    usualAt(indoorDays, crop, lengths, marks),
  );
  return {
    day: transplanted,
    mark: { degreeDays: credit, least: credit, most: credit },
    what: `planting out on ${said(transplanted)}`,
    indoors: { degreeDays: Math.round(credit), days: indoorDays },
  };
}

/** In a day of one temperature. */
function degreeDaysAt(temperatureC: number, { baseC, upperC = Infinity }: Thresholds): number {
  return Math.max(0, Math.min(temperatureC, upperC) - baseC);
}

/** What a young plant of that age has by the usual lengths: however warm it stood, it is no further. */
function usualAt(
  days: number,
  crop: Crop,
  lengths: StageLengths,
  marks: readonly (HeatMark | undefined)[],
): number {
  const points = crop.course.stages.flatMap((stage, i) => {
    const mark = marks[i];
    return mark === undefined ? [] : [{ day: offsetDays(stage, lengths), sum: mark.degreeDays }];
  });
  const after = points.find(({ day }) => day >= days);
  const before = points.findLast(({ day }) => day < days) ?? { day: 0, sum: 0 };
  if (after === undefined) return before.sum;
  if (after.day === before.day) return after.sum;
  return before.sum + ((after.sum - before.sum) * (days - before.day)) / (after.day - before.day);
}

/** What a plan tells beside its rounds: warnings, notes, defaults used. */
// @ts-nocheck

import { addDays, type Day, within } from "../dates.js";
import {
  type FeedingCourse,
  type Schedule,
  type TimeAway,
  timeAwayIn,
  type UnmetWindow,
} from "../days/index.js";
import {
  type Amounts,
  counted,
  type Garden,
  pouredText,
  shortDay,
  vesselOf,
  volumeText,
} from "../garden/index.js";
import type { GivenFeeding } from "../log/index.js";
import type { PlanNote, PlanWarning } from "../season/index.js";
import { batchName, type Emptied } from "../stock/index.js";
import { given } from "../values.js";

/** A window that no allowed day could serve in time, and the course it is of. */
interface Unserved extends UnmetWindow {
  readonly of: FeedingCourse;
}

/**
 * One warning for each window that no allowed day could serve in time; a note for each that passed
 * without what could have been given in it.
 * @param allowed days on which anything could be fed since the season was planned
 */
export function windowWarnings(
  { unmet }: Schedule,
  courses: readonly FeedingCourse[],
  allowed: readonly Day[],
  garden: Garden,
  isMissed: (window: UnmetWindow, course: FeedingCourse) => boolean,
): { warnings: PlanWarning[]; notes: PlanNote[] } {
  const byId = new Map(courses.map((of) => [of.course.id, of]));
  const unserved = unmet.flatMap((window): Unserved[] => {
    const of = byId.get(window.course);
    return of === undefined ? [] : [{ ...window, of }];
  });
  const isToBeNoted = (window: Unserved): boolean => isMissed(window, window.of);
  return {
    warnings: unserved
      .filter((window) => !isToBeNoted(window))
      .map((window) => unservedWarning(window, allowed, garden)),
    notes: unserved.filter(isToBeNoted).map((window) => missedNote(window, garden.amounts)),
  };
}

function missedNote(
  { window, fedOn, of: { course, planting } }: Unserved,
  amounts: Amounts,
): PlanNote {
  const { id, cropWord } = planting;
  const since = course.lastFed === undefined ? "" : ` since ${shortDay(course.lastFed, amounts)}`;
  const next =
    fedOn === undefined
      ? "no day is left for it"
      : `it is fed on ${shortDay(fedOn, amounts)}, and the feedings after it are counted from there`;
  return {
    code: "missed",
    planting: id,
    day: fedOn ?? window.latest,
    message: `${id} (${cropWord}): a feeding was due by ${shortDay(window.latest, amounts)} and none was given${since}; ${next}`,
    advice: [],
  };
}

function unservedWarning(unserved: Unserved, allowed: readonly Day[], garden: Garden): PlanWarning {
  const { window, fedOn, lateDays } = unserved;
  const { course, planting } = unserved.of;
  const { earliest, latest } = window;
  const said = (one: Day): string => shortDay(one, garden.amounts);
  const span =
    earliest === latest ? `on ${said(earliest)}` : `from ${said(earliest)} to ${said(latest)}`;
  // Late days are fewest in a schedule: who passes a day by spares later feedings at least as many.
  const inWindow = (day: Day): boolean => within(day, { from: earliest, to: latest });
  const avoided = (course.avoidDays ?? []).filter(inWindow);
  const passedBy = allowed.filter((day) => inWindow(day) && !avoided.includes(day));
  const why =
    passedBy.length === 0
      ? `no feeding day falls ${span}`
      : `not fed ${span}, as a feeding on ${passedBy.map(said).join(" or ")} would make later ones late by as many days or more`;
  const day = fedOn ?? latest;
  const away = timeAwayIn(garden, { from: earliest, to: day });
  const meanwhile =
    away === undefined ? "" : `, and you are away from ${said(away.from)} to ${said(away.to)}`;
  const what = `${planting.id} (${planting.cropWord}): ${why}${meanwhile}`;
  return {
    code: fedOn === undefined ? "window-not-served" : "window-served-late",
    planting: planting.id,
    bed: planting.bed,
    day,
    // In the days away nobody would read it.
    ...given({ tellOn: away?.lastDayBefore }),
    message:
      fedOn === undefined
        ? `${what}; nor can it be fed later, before its feeding ends on ${said(course.coverTo)}`
        : `${what}; it is fed on ${said(fedOn)}, ${counted(lateDays, "day")} late`,
    mend: mendFor(unserved, avoided, away, said),
  };
}

/** @param avoided days of the window that are too near to another feed */
function mendFor(
  { window, of }: Unserved,
  avoided: readonly Day[],
  away: TimeAway | undefined,
  said: (day: Day) => string,
): string {
  const usual = away === undefined ? "add a feeding day" : mendForAway(window, of, away, said);
  return avoided.length === 0
    ? usual
    : `move the other feed that is too near to ${avoided.map(said).join(" and ")}, or ${usual}`;
}

function mendForAway(
  { earliest, latest }: UnmetWindow["window"],
  { course }: FeedingCourse,
  away: TimeAway,
  said: (day: Day) => string,
): string {
  const lastDay = addDays(away.from, -1);
  if (earliest === lastDay) return `feed it on ${said(lastDay)}, before you leave, or ${someone}`;
  if (earliest < lastDay)
    return `feed it from ${said(earliest)} to ${said(lastDay)}, before you leave, or ${someone}`;
  const helper = `have someone feed it from ${said(earliest)} to ${said(latest)}`;
  const isFirst = course.lastFed === undefined && earliest === course.first.earliest;
  return isFirst ? helper : `${helper}, or feed it as late as you can before you leave`;
}

const someone = "have someone feed it while you are away";

/** What the log gives in the season to a planting that was not growing, or that no rule feeds. */
export function strayNotes(strays: readonly GivenFeeding[], garden: Garden): PlanNote[] {
  const plantings = garden.beds.flatMap((bed) => bed.plantings);
  const inSeason = strays.filter(({ day }) => within(day, garden.season));
  return inSeason.flatMap(({ planting: id, day, stockMl, asPublished }): PlanNote[] => {
    const planting = plantings.find((p) => p.id === id);
    if (planting === undefined || asPublished) return [];
    const amount =
      stockMl === undefined ? "stock" : `${pouredText(stockMl, garden.amounts)} of stock`;
    return [
      {
        code: "log",
        planting: id,
        day,
        message: `${id} (${planting.cropWord}): the log gives it ${amount} on ${shortDay(day, garden.amounts)}, when it was not growing, or no rule feeds it: check the day and the planting; the stock is taken off the bottle all the same`,
        advice: [],
      },
    ];
  });
}

/** A little over is a jug misread, and tells that the bottle is empty. */
export function emptiedNotes(emptied: readonly Emptied[], { log, amounts }: Garden): PlanNote[] {
  return emptied.map(({ taken: { day, ml, path }, batch, overMl }) => ({
    code: "log",
    ...given({ planting: log.find((entry) => entry.path === path)?.planting }),
    day,
    message: `${path === undefined ? "as published, the round takes" : "the log gives"} ${pouredText(ml, amounts)} from ${batchName(batch)} on ${shortDay(day, amounts)}, ${pouredText(overMl, amounts)} more than was left: it is taken as empty since`,
    advice: [],
  }));
}

/** Defaults that matter only because something is sprayed. */
export function usedDefaults(garden: Garden, courses: readonly FeedingCourse[]): string[] {
  const sprayed = courses
    .filter(({ route }) => vesselOf(route) === "sprayer")
    .map((c) => c.planting);
  return [
    ...(sprayed.length > 0 && garden.sprayerIsUsual
      ? [
          `a sprayer of ${volumeText(garden.sprayerL, garden.amounts)}, as none is given (\`sprayer:\`)`,
        ]
      : []),
    ...sprayed
      .filter((planting) => planting.sprayIsUsual)
      .map(
        (p) =>
          `${p.id}: ${volumeText(p.sprayL, garden.amounts)} of spray in all, usual for the crop (\`spray:\`)`,
      ),
  ];
}

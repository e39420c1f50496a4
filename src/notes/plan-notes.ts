/** What a plan tells beside its rounds: warnings, notes, defaults used. */
import { type Day, within } from "../dates.js";
import type { FeedingCourse, Schedule, UnmetWindow } from "../days/index.js";
import { counted, type Garden, pouredText, vesselOf, volumeText } from "../garden/index.js";
import type { GivenFeeding } from "../log/index.js";
import type { PlanNote, PlanWarning } from "../season/index.js";

/** A window that no allowed day could serve in time, and the course it is of. */
interface Unserved extends UnmetWindow {
  readonly of: FeedingCourse;
}

/**
 * One warning for each window that no allowed day could serve in time; a note for each that passed
 * before today without a word in the log.
 * @param allowed days on which anything can be fed
 */
export function windowWarnings(
  { unmet }: Schedule,
  courses: readonly FeedingCourse[],
  allowed: readonly Day[],
  today: Day,
): { warnings: PlanWarning[]; notes: PlanNote[] } {
  const byId = new Map(courses.map((of) => [of.course.id, of]));
  const unserved = unmet.flatMap((window): Unserved[] => {
    const of = byId.get(window.course);
    return of === undefined ? [] : [{ ...window, of }];
  });
  const isMissed = ({ window }: UnmetWindow): boolean => window.latest < today;
  return {
    warnings: unserved
      .filter((window) => !isMissed(window))
      .map((window) => unservedWarning(window, allowed)),
    notes: unserved.filter(isMissed).map(missedNote),
  };
}

function missedNote({ window, fedOn, of: { course, planting } }: Unserved): PlanNote {
  const { id, cropWord } = planting;
  const since = course.lastFed === undefined ? "" : ` since ${course.lastFed}`;
  const next =
    fedOn === undefined
      ? "no day is left for it"
      : `it is fed on ${fedOn}, and the feedings after it are counted from there`;
  return {
    code: "missed",
    planting: id,
    day: fedOn ?? window.latest,
    message: `${id} (${cropWord}): a feeding was due by ${window.latest} and the log holds none${since}; ${next}`,
    advice: [],
  };
}

function unservedWarning(unserved: Unserved, allowed: readonly Day[]): PlanWarning {
  const { window, fedOn, lateDays } = unserved;
  const { course, planting } = unserved.of;
  const { earliest, latest } = window;
  const span = earliest === latest ? `on ${earliest}` : `from ${earliest} to ${latest}`;
  // Late days are fewest in a schedule: who passes a day by spares later feedings at least as many.
  const inWindow = (day: Day): boolean => within(day, { from: earliest, to: latest });
  const avoided = (course.avoidDays ?? []).filter(inWindow);
  const passedBy = allowed.filter((day) => inWindow(day) && !avoided.includes(day));
  const why =
    passedBy.length === 0
      ? `no feeding day falls ${span}`
      : `not fed ${span}, as a feeding on ${passedBy.join(" or ")} would make later ones late by as many days or more`;
  const what = `${planting.id} (${planting.cropWord}): ${why}`;
  return {
    code: fedOn === undefined ? "window-not-served" : "window-served-late",
    planting: planting.id,
    bed: planting.bed,
    day: fedOn ?? latest,
    message:
      fedOn === undefined
        ? `${what}, nor later before its feeding ends on ${course.coverTo}`
        : `${what}; it is fed on ${fedOn}, ${counted(lateDays, "day")} late`,
    mend: mendFor(avoided),
  };
}

/** @param avoided days of the window that are too near to another feed */
function mendFor(avoided: readonly Day[]): string {
  const usual = "add a feeding day, or have someone feed while you are away";
  return avoided.length === 0
    ? usual
    : `move the other feed that is too near to ${avoided.join(" and ")}, or ${usual}`;
}

/** What the log gives to a planting that was not growing, or that no rule feeds. */
export function strayNotes(strays: readonly GivenFeeding[], garden: Garden): PlanNote[] {
  const plantings = garden.beds.flatMap((bed) => bed.plantings);
  return strays.flatMap(({ planting: id, day, stockMl }): PlanNote[] => {
    const planting = plantings.find((p) => p.id === id);
    if (planting === undefined) return [];
    const amount =
      stockMl === undefined ? "stock" : `${pouredText(stockMl, garden.amounts)} of stock`;
    return [
      {
        code: "log",
        planting: id,
        day,
        message: `${id} (${planting.cropWord}): the log gives it ${amount} on ${day}, when it was not growing, or no rule feeds it: check the day and the planting; the stock is taken off the bottle all the same`,
        advice: [],
      },
    ];
  });
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

/** What a plan tells beside its rounds: warnings, notes, defaults used. */
import type { Day } from "../dates.js";
import type { FeedingCourse, Schedule, UnmetWindow } from "../days/index.js";
import { decimal, type Garden, vesselOf, volumeText } from "../garden/index.js";
import type { GivenFeeding } from "../log/index.js";
import type { PlanNote, PlanWarning } from "../season/index.js";

/**
 * One warning for each window that no allowed day could serve in time; a note for each that passed
 * before today without a word in the log.
 */
export function windowWarnings(
  schedule: Schedule,
  courses: readonly FeedingCourse[],
  today: Day,
): { warnings: PlanWarning[]; notes: PlanNote[] } {
  const missed = schedule.unmet.filter((unmet) => unmet.window.latest < today);
  return {
    warnings: unservedWarnings(
      { ...schedule, unmet: schedule.unmet.filter((unmet) => !missed.includes(unmet)) },
      courses,
    ),
    notes: missed.flatMap((unmet) => missedNote(unmet, courses)),
  };
}

function missedNote(unmet: UnmetWindow, courses: readonly FeedingCourse[]): PlanNote[] {
  const course = courses.find((c) => c.course.id === unmet.course);
  if (course === undefined) return [];
  const { id, cropWord } = course.planting;
  const { lastFed } = course.course;
  const since = lastFed === undefined ? "" : ` since ${lastFed}`;
  const next =
    unmet.fedOn === undefined
      ? "no day is left for it"
      : `it is fed on ${unmet.fedOn}, and the feedings after it are counted from there`;
  return [
    {
      code: "missed",
      planting: id,
      day: unmet.fedOn ?? unmet.window.latest,
      message: `${id} (${cropWord}): a feeding was due by ${unmet.window.latest} and the log holds none${since}; ${next}`,
      advice: [],
    },
  ];
}

/** What the log gives to a planting that was not growing, or that no rule feeds. */
export function strayNotes(strays: readonly GivenFeeding[], garden: Garden): PlanNote[] {
  const plantings = garden.beds.flatMap((bed) => bed.plantings);
  return strays.flatMap(({ planting: id, day, stockMl }): PlanNote[] => {
    const planting = plantings.find((p) => p.id === id);
    if (planting === undefined) return [];
    const amount = stockMl === undefined ? "stock" : `${decimal(stockMl, 1)} mL of stock`;
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

function unservedWarnings(schedule: Schedule, courses: readonly FeedingCourse[]): PlanWarning[] {
  const byId = new Map(courses.map((course) => [course.course.id, course]));
  return schedule.unmet.flatMap(({ course: id, window, fedOn, lateDays }): PlanWarning[] => {
    const course = byId.get(id);
    if (course === undefined) return [];
    const { planting } = course;
    const span =
      window.earliest === window.latest
        ? `on ${window.earliest}`
        : `from ${window.earliest} to ${window.latest}`;
    const what = `${planting.id} (${planting.cropWord}): no feeding day falls ${span}`;
    return [
      {
        code: fedOn === undefined ? "window-not-served" : "window-served-late",
        planting: planting.id,
        bed: planting.bed,
        day: fedOn ?? window.latest,
        message:
          fedOn === undefined
            ? `${what}, nor later before its feeding ends on ${course.course.coverTo}`
            : `${what}; it is fed on ${fedOn}, ${lateDays} ${lateDays === 1 ? "day" : "days"} late`,
        mend: mendFor(course.course.avoidDays ?? [], window),
      },
    ];
  });
}

function mendFor(avoidDays: readonly Day[], window: UnmetWindow["window"]): string {
  const avoided = avoidDays.filter((day) => window.earliest <= day && day <= window.latest);
  const usual = "add a feeding day, or have someone feed while you are away";
  return avoided.length === 0
    ? usual
    : `move the other feed that is too near to ${avoided.join(" and ")}, or ${usual}`;
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

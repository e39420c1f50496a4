/** What a plan has to tell on a day beside what is to be done. */
import type { Day } from "../dates.js";
import type { Plan, PlanNote, PlanWarning } from "../season/index.js";
import { given } from "../values.js";

/** A warning, or a note of what the log or a sign changed. */
export interface Told {
  readonly code: string;
  readonly day: Day;
  /** Absent where it concerns the whole garden. */
  readonly bed?: string;
  /** What it is about: a planting or bed, or nothing. */
  readonly subject: string;
  readonly message: string;
  /** Message and what helps, plain text lines. */
  readonly lines: readonly string[];
}

/** Warnings without a day are left to the plan. */
export function toldOf({ warnings, notes, plantings }: Plan): Told[] {
  const bedOf = (planting: string | undefined) => plantings.find(({ id }) => id === planting)?.bed;
  const placed = (item: Pick<PlanWarning, "code" | "bed" | "planting" | "message">, day: Day) => {
    const { code, message, planting, bed = bedOf(planting) } = item;
    return {
      code,
      day,
      subject: planting ?? bed ?? "",
      message,
      ...given({ bed }),
    };
  };
  return [
    ...warnings.flatMap((warning): Told[] =>
      warning.day === undefined
        ? []
        : [{ ...placed(warning, warning.day), lines: warningLines(warning) }],
    ),
    ...notes.map((note): Told => ({ ...placed(note, note.day), lines: noteLines(note) })),
  ];
}

export function warningLines({ message, mend }: Pick<PlanWarning, "message" | "mend">): string[] {
  return [`Warning: ${message}`, ...(mend === "" ? [] : [`What helps: ${mend}`])];
}

function noteLines({ message, advice }: PlanNote): string[] {
  return [`Note: ${message}`, ...advice.map((line) => `First: ${line}`)];
}

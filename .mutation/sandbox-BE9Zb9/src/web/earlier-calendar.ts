/** A calendar that was written before, opened by the grower. */
// @ts-nocheck

import { daysTold, readEarlierCalendar } from "../calendar/index.js";
import type { Garden } from "../garden/index.js";
import type { Result } from "../problem.js";
import { nothingPublished, type Published } from "../published/index.js";

export interface PublishedBefore {
  readonly published: Published;
  /** Only the days of the rounds are known: an earlier version wrote the file, or it is a copy. */
  readonly isDaysOnly: boolean;
}

/** Problems where it is no whole calendar of that garden; an empty text is none yet. */
export function publishedBefore(text: string, garden: Garden): Result<PublishedBefore> {
  if (text === "") return { ok: true, value: { published: nothingPublished, isDaysOnly: false } };
  const file = garden.calendarFile ?? "calendar.ics";
  const earlier = readEarlierCalendar(text, garden.id);
  if (!earlier.ok)
    return { ok: false, problems: earlier.problems.map((problem) => ({ ...problem, file })) };
  const { published } = earlier.value;
  return {
    ok: true,
    value: {
      published: published ?? daysTold(earlier.value),
      isDaysOnly: published === undefined,
    },
  };
}

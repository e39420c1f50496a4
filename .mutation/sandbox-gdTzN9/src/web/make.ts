/** What is made of a plan when it is asked for: calendar, sheet, labels, recipe, page. */
// @ts-nocheck

import { calendarText } from "../calendar/index.js";
import {
  bottleLabels,
  gardenPage,
  labelRows,
  labelSheet,
  type Paper,
  recipePage,
  seasonSheet,
} from "../outputs/index.js";
import type { Problem } from "../problem.js";
import { loadLabelSheets } from "../tables.js";
import { given } from "../values.js";
import type { Answered, Made, Making, Writing } from "./messages.js";
import type { Planned } from "./planned.js";

export function makeOf(what: Making, { garden, plan }: Planned, writing: Writing): Answered {
  const paper: Paper = garden.amounts === "us" ? "letter" : "a4";
  const page = (kind: string, text: string, more: Partial<Made> = {}): Answered => ({
    kind: "made",
    made: { name: `${garden.id}-${kind}.html`, type: "text/html", text, ...more },
  });
  switch (what.kind) {
    case "calendar":
      return calendarOf({ garden, plan }, writing);
    case "sheet":
      return page("sheet", seasonSheet(plan, { paper }));
    case "recipe":
      return page("recipe", recipePage(plan));
    case "page":
      return page("page", gardenPage(plan, { today: plan.today }));
    case "labels": {
      const sheets = loadLabelSheets();
      const fitting = sheets.find((row) =>
        what.size === undefined ? row.paper === paper : row.name === what.size,
      );
      if (fitting === undefined) throw new Error("sizes come from the same table");
      const labels = bottleLabels(labelRows(plan), labelSheet(fitting));
      if (!labels.ok)
        return refused("labels", labels.problems[0]?.message, labels.problems[0]?.mend, writing);
      const names = [fitting, ...sheets.filter((row) => row !== fitting)].map(({ name }) => name);
      return page("labels", labels.value, { sizes: names });
    }
  }
}

/** As `feedround calendar --out` writes it, over the earlier file if one was opened. */
function calendarOf(
  { garden, plan }: Pick<Planned, "garden" | "plan">,
  { calendar, nowMs }: Writing,
): Answered {
  const text = calendarText(plan, {
    ...{ for: "import", today: plan.today, stamp: new Date(nowMs).toISOString() },
    ...given({ previous: calendar === "" ? undefined : calendar }),
  });
  if (!text.ok) throw new Error("what the plan goes on from has been read without problems");
  const name = garden.calendarFile?.split("/").at(-1) ?? `${garden.id}.ics`;
  return { kind: "made", made: { name, type: "text/calendar", text: text.value } };
}

function refused(code: string, message = "", mend = "", { file }: Writing): Answered {
  const problem: Problem = { code, file, at: { line: 1, column: 1 }, message, mend };
  return { kind: "problems", problems: [problem] };
}

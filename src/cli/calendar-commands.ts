/** `calendar` and `changes`: the calendar file, and what a new one would change in it. */
import { Option } from "commander";
import type { CalendarOptions } from "./calendar-command.js";
import type { ChangesOptions } from "./changes-command.js";
import type { AddCommand, SetExit } from "./program.js";
import { stampOption, todayOption } from "./option-values.js";
import type { Shell } from "./shell.js";

export function addCalendarCommands(add: AddCommand, setExit: SetExit, shell: Shell): void {
  add("calendar <garden>", "write the calendar (iCalendar, .ics)", [
    "calendar garden.yaml --out garden.ics",
    "calendar garden.yaml --out feed.ics --for subscription",
    "calendar garden.yaml > garden.ics",
  ])
    .option("--out <file>", "write this file instead of standard output; an earlier one is kept up")
    .addOption(
      new Option(
        "--for <use>",
        "what an earlier file holds and the plan no longer does is cancelled (import) or left out (subscription)",
      )
        .choices(["import", "subscription"])
        .default("import"),
    )
    .addOption(todayOption())
    .option("--stamp <instant>", "when it is made, such as 2027-03-01T08:00:00Z", stampOption)
    .action(async (file: string, options: CalendarOptions) => {
      const { calendarCommand } = await import("./calendar-command.js");
      setExit(await calendarCommand(file, options, shell));
    });

  add("changes <calendar> <garden>", "tell what would change in a calendar written before", [
    "changes garden.ics garden.yaml",
    "changes garden.ics garden.yaml --json",
  ])
    .option("--json", "print the changes as JSON")
    .addOption(todayOption())
    .action(async (calendar: string, garden: string, options: ChangesOptions) => {
      const { changesCommand } = await import("./changes-command.js");
      setExit(await changesCommand(calendar, garden, options, shell));
    });
}

/** A garden file and its calendar in a folder of their own, day by day through the real commands. */
// @ts-nocheck

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Plan } from "../../src/season/season-plan.js";
import { cli, type CliResult, scratchFolder } from "../support/run-cli.js";

export interface KeptGarden {
  readonly file: string;
  readonly calendar: string;
  text: () => string;
  edit: (from: string | RegExp, to: string) => void;
  run: (today: string, command: string, ...more: string[]) => Promise<CliResult>;
  /** Writes the calendar; its text. */
  publish: (today: string, ...more: string[]) => Promise<string>;
  plan: (today: string) => Promise<Plan>;
  /** Days on which a planting is fed by the plan of a day: those given, and those to come. */
  days: (today: string, planting: string) => Promise<{ given: string[]; ahead: string[] }>;
}

export function keptGarden(text: string): KeptGarden {
  const folder = scratchFolder();
  const file = join(folder, "garden.yaml");
  const calendar = join(folder, "gate.ics");
  writeFileSync(file, text);
  const run: KeptGarden["run"] = (today, command, ...more) =>
    cli([command, file, ...more], { today, now: `${today}T08:00:00Z` });
  const plan: KeptGarden["plan"] = async (today) => {
    const { code, stdout, stderr } = await run(today, "plan", "--json");
    if (code !== 0) throw new Error(stderr);
    return JSON.parse(stdout) as Plan;
  };
  return {
    file,
    calendar,
    run,
    plan,
    text: () => readFileSync(file, "utf8"),
    edit: (from, to) => {
      const before = readFileSync(file, "utf8");
      const after = before.replace(from, to);
      if (after === before) throw new Error(`nothing to edit: ${String(from)}`);
      writeFileSync(file, after);
    },
    publish: async (today, ...more) => {
      const { code, stderr } = await run(today, "calendar", "--out", calendar, ...more);
      if (code !== 0) throw new Error(stderr);
      return readFileSync(calendar, "utf8");
    },
    days: async (today, planting) => {
      const { rounds } = await plan(today);
      const fed = rounds.flatMap(({ day, beds }) =>
        beds.flatMap(({ mixes }) =>
          mixes
            .filter((mix) => mix.feedings.some((feeding) => feeding.planting === planting))
            .map((mix) => ({ day, isGiven: mix.given === true })),
        ),
      );
      return {
        given: fed.filter(({ isGiven }) => isGiven).map(({ day }) => day),
        ahead: fed.filter(({ isGiven }) => !isGiven).map(({ day }) => day),
      };
    },
  };
}

/** Tomatoes and cucumbers fed at weekends; the file names its calendar. */
export const gatePlot = `version: 1
id: gate-plot
garden: Gate plot
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
can: 9 L
source_water: { hardness: 90 mg/L }
feeding: { days: [sat, sun] }
calendar: { file: gate.ics }
stock: { shells_per_week: 10 }
beds:
  - id: south
    plantings:
      - { id: toms, crop: tomato, plants: 6, transplanted: 2027-04-20, water: 2 L per plant }
      - { id: cukes, crop: cucumber, plants: 3, transplanted: 2027-04-20, water: 2 L per plant }
`;

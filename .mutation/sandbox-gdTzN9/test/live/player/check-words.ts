/** What the other commands say, against the plan: the sheet, the reasons, the log. */
// @ts-nocheck

import type { Day } from "../../../src/dates.js";
import type { Plan } from "../../../src/season/season-plan.js";
import { type Grower, runOn } from "./grower.js";
import { plannedIn } from "./check-feedings.js";

export async function unlikeEachOther(grower: Grower, plan: Plan, today: Day): Promise<string[]> {
  const now = `${today}T12:00:00Z`;
  const sheet = await runOn(grower, today, now, "sheet");
  const check = await runOn(grower, today, now, "check");
  const cans = plan.rounds.flatMap(({ beds }) =>
    beds.flatMap(({ mixes }) =>
      mixes.flatMap(({ fills }) => fills.map(({ jug, stockText }) => jug?.stockText ?? stockText)),
    ),
  );
  const next = plannedIn(plan).find(({ day, isGiven }) => day >= today && !isGiven);
  return [
    ...(sheet.code === 0 ? [] : [`sheet: exit code ${sheet.code}`]),
    ...(check.code === 0 ? [] : [`check: exit code ${check.code}`]),
    ...cans
      .filter((text) => !sheet.stdout.includes(text))
      .map((text) => `not on the sheet: ${text}`),
    ...(next === undefined ? [] : await reasonsOf(grower, plan, next.day, today)),
  ];
}

interface Reasons {
  readonly planting: { readonly id: string };
  readonly feedings: readonly { readonly mix: { readonly stockMl: number } }[];
}

async function reasonsOf(grower: Grower, plan: Plan, day: Day, today: Day): Promise<string[]> {
  const { code, stdout } = await runOn(grower, today, `${today}T12:00:00Z`, "why", day, "--json");
  if (code !== 0) return [`why ${day}: exit code ${code}`];
  const said = (JSON.parse(stdout) as readonly Reasons[]).flatMap(({ planting, feedings }) =>
    feedings.map(({ mix }) => `${planting.id} ${mix.stockMl}`),
  );
  const planned = plan.rounds
    .filter((round) => round.day === day)
    .flatMap(({ beds }) => beds.flatMap(({ mixes }) => mixes))
    .flatMap(({ feedings, stockMl }) => feedings.map(({ planting }) => `${planting} ${stockMl}`));
  const isSame = [...said].sort().join() === [...planned].sort().join();
  return isSame ? [] : [`why ${day} says ${said.join(", ")}; the plan ${planned.join(", ")}`];
}

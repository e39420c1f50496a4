import type { Day } from "../dates.js";
import type { Published } from "../published/index.js";
import { given } from "../values.js";
import type { Plan } from "./season-plan.js";

/** What an earlier plan has published. */
export function publishedBy(plan: Plan, extraRounds?: number): Published {
  const feedings = new Map<string, Day[]>();
  for (const { day, beds } of plan.rounds)
    for (const { route, feedings: fed } of beds.flatMap((bed) => bed.mixes))
      for (const { planting } of fed) {
        const line = `${planting}/${route}`;
        feedings.set(line, [...(feedings.get(line) ?? []), day]);
      }
  const days = plan.rounds.filter(({ beds }) => beds.length > 0).map(({ day }) => day);
  return { days, feedings, ...given({ extraRounds }) };
}

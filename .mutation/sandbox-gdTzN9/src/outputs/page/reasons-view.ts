// @ts-nocheck
import type { Day } from "../../dates.js";
import type { Plan } from "../../season/index.js";
import { calciumSection } from "./calcium-section.js";
import { originSection } from "./origin-section.js";
import { reasonsSection } from "./reasons-section.js";
import { partsOf, type ViewPart } from "./view-part.js";
import { waterSection } from "./water-section.js";

/** The rest of the page: what each bed drinks, where its calcium is from, and why it is fed or not. */
export function reasonsView(made: Plan, today: Day): readonly ViewPart[] {
  const plan = { ...made, today };
  return partsOf({
    water: waterSection(plan),
    origin: originSection(plan),
    calcium: calciumSection(plan),
    why: reasonsSection(plan),
  });
}

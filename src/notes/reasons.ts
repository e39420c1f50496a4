/** Why a planting is fed on a day: stage, rule, interval, and the arithmetic to the millilitres. */
import type { PlantingCalcium } from "../calcium/index.js";
import { type Day, daysBetween } from "../dates.js";
import type { FeedRule } from "../rules/index.js";
import type {
  BedRound,
  CanMix,
  Feeding,
  Plan,
  PlannedPlanting,
  StrainedWhite,
} from "../season/index.js";
import { stageNearest, type StageSpan } from "../stages/index.js";
import { given, grouped } from "../values.js";

/** Why a planting is fed on one day, and where the amount comes from. */
export interface FeedingReason {
  readonly planting: PlannedPlanting;
  readonly day: Day;
  readonly feeding: Feeding;
  readonly stage: StageSpan;
  readonly rule: FeedRule;
  /** Days since the feeding before it of the same route. */
  readonly gapDays?: number;
  /** The cans it shares with others of its bed. */
  readonly mix: CanMix;
  readonly bed: BedRound;
  /** What the strength of its bottles rests on, each once. */
  readonly whites: readonly StrainedWhite[];
}

/** Why a planting is fed when it is, or why not. */
export interface PlantingReasons {
  readonly planting: PlannedPlanting;
  /** Where its calcium comes from; absent where its crop is only listed. */
  readonly calcium?: PlantingCalcium;
  readonly feedings: readonly FeedingReason[];
}

/**
 * Why plantings are fed: one or all, on one day or all. One that is not fed has its reason alone; an id
 * that is not in the plan gives none.
 */
export function reasonsFor(plan: Plan, planting?: string, on?: Day): PlantingReasons[] {
  return plan.plantings
    .filter((p) => planting === undefined || p.id === planting)
    .map((p) => ({
      planting: p,
      ...given({ calcium: plan.calcium.find((sum) => sum.planting === p.id) }),
      feedings: feedingsOf(plan, p).filter((f) => on === undefined || f.day === on),
    }))
    .filter(({ feedings }) => on === undefined || planting !== undefined || feedings.length > 0);
}

function feedingsOf(plan: Plan, planting: PlannedPlanting): FeedingReason[] {
  const before = new Map<string, Day>();
  return plan.rounds.flatMap(({ day, beds }) =>
    beds.flatMap((bed) =>
      bed.mixes.flatMap((mix) =>
        mix.feedings
          .filter((feeding) => feeding.planting === planting.id)
          .map((feeding): FeedingReason => {
            const last = before.get(mix.route);
            before.set(mix.route, day);
            return {
              planting,
              day,
              feeding,
              stage: stageOf(planting, day),
              rule: ruleOf(plan, feeding.rule),
              ...given({ gapDays: last && daysBetween(last, day) }),
              mix,
              bed,
              whites: whitesOf(plan, mix),
            };
          }),
      ),
    ),
  );
}

function whitesOf({ stock }: Plan, { pours = [], given: isGiven }: CanMix): StrainedWhite[] {
  if (isGiven) return [];
  const { inHand = [], newWhite } = stock ?? {};
  const bottles = pours.map(({ batch }) => inHand.find(({ id }) => id === batch));
  const whites = bottles.flatMap((bottle) => (bottle ? bottle.white : newWhite) ?? []);
  return [...grouped(whites, ({ strainer, assumed }) => `${strainer} ${assumed}`).values()].map(
    ([white]) => white,
  );
}

function stageOf(planting: PlannedPlanting, day: Day): StageSpan {
  const stage = stageNearest(planting.stages, day);
  if (stage === undefined) throw new Error(`${planting.id} has no stage on ${day}`);
  return stage;
}

function ruleOf(plan: Plan, id: string): FeedRule {
  const rule = plan.rules.find((r) => r.id === id);
  if (rule === undefined) throw new Error(`the plan lacks its rule ${id}`);
  return rule;
}

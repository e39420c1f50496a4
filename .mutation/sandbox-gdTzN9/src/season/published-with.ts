/** The published state with a plan in it. */
// @ts-nocheck

import { addDays, type Day } from "../dates.js";
import type { Route } from "../garden/index.js";
import type {
  Moved,
  Published,
  PublishedBatch,
  PublishedMix,
  PublishedPour,
  PublishedRound,
} from "../published/index.js";
import { dayOfStep, type PlannedBatch, type StockPlan } from "../stock/index.js";
import { byText, given } from "../values.js";
import type { CanMix, Round } from "./season-plan.js";

/** So long after its day a round is forgotten: no season and no bottle reaches back so far. Our choice. */
const keptDays = 400;

/** A planting's feeding on a day. */
export interface FedLine {
  readonly planting: string;
  readonly route: Route;
  readonly day: Day;
}

/** A round, whole or in part, that the forecast moves to another day. */
export interface RoundMove {
  readonly to: Day;
  readonly moved: Moved;
}

/** What of the rounds to come is not as it was told. */
interface OffItsDay {
  /** Published for a later day and written down already: they stay, for the log leans on them. */
  readonly early: readonly FedLine[];
  readonly moves: readonly RoundMove[];
}

/**
 * What is past stays as it was published; what is to come is as it is planned now. A round, a feed or
 * a batch that was told before keeps the day on which it was first told.
 *
 * @param earlier undefined where nothing was published
 */
export function publishedWith(
  earlier: Published | undefined,
  rounds: readonly Round[],
  making: StockPlan,
  { early, moves }: OffItsDay,
  today: Day,
): Published {
  const { rounds: told = [], feeds: toldFeeds = [], batches: toldBatches = [] } = earlier ?? {};
  const isPast = ({ day }: { readonly day: Day }): boolean => day < today;
  const isKept = (one: { readonly day: Day }): boolean =>
    isPast(one) && one.day >= addDays(today, -keptDays);
  const firstTold = (same: { readonly first: Day } | undefined): Day => same?.first ?? today;
  const days = new Set([today, ...[...rounds, ...early].map(({ day }) => day)]);
  const ahead = [...days].sort().flatMap((day): PublishedRound[] => {
    if (day < today) return [];
    const round = { day, beds: rounds.find((one) => one.day === day)?.beds ?? [] };
    const same = told.find((one) => one.day === day);
    const planned = [...mixesToCome(round), ...writtenDownEarly(same, early)];
    const mixes = [...planned, ...(round.day === today ? writtenDownToday(same, planned) : [])];
    const moved = moves.find(({ to }) => to === day)?.moved ?? same?.moved;
    return mixes.length === 0 ? [] : [{ day, first: firstTold(same), mixes, ...given({ moved }) }];
  });
  const feeds = rounds
    .filter((round) => !isPast(round))
    .flatMap(({ day, feeds: mixes = [] }) =>
      [...new Set(mixes.filter((mix) => !mix.given).map(({ feed }) => feed))].map((feed) => {
        const same = toldFeeds.find((one) => one.day === day && one.feed === feed);
        return { day, first: firstTold(same), feed };
      }),
    );
  return {
    rounds: [...told.filter(isKept), ...ahead],
    feeds: [...toldFeeds.filter(isKept), ...feeds],
    batches: batchesWith(toldBatches, making, today),
    ...shellsWith(earlier, making, today),
  };
}

/** What of a later round the log holds already. */
function writtenDownEarly(
  told: PublishedRound | undefined,
  early: readonly FedLine[],
): PublishedMix[] {
  return (told?.mixes ?? []).flatMap((mix): PublishedMix[] => {
    const isEarly = ({ planting }: PublishedMix["fed"][number]): boolean =>
      early.some(
        (one) => one.planting === planting && one.route === mix.route && one.day === told?.day,
      );
    const fed = mix.fed.filter(isEarly);
    if (fed.length === 0) return [];
    const share = waterOf(fed) / waterOf(mix.fed);
    return [{ ...mix, fed, pours: mix.pours.map((pour) => ({ ...pour, ml: pour.ml * share })) }];
  });
}

function waterOf(fed: PublishedMix["fed"]): number {
  return fed.reduce((sum, { waterL }) => sum + waterL, 0);
}

/** What of today's round the log holds already stays in the record: the log tells what differed. */
function writtenDownToday(
  told: PublishedRound | undefined,
  planned: readonly PublishedMix[],
): PublishedMix[] {
  const open = new Set(
    planned.flatMap(({ route, fed }) => fed.map(({ planting }) => `${planting}/${route}`)),
  );
  return (told?.mixes ?? []).filter(
    ({ route, fed }) => !fed.some(({ planting }) => open.has(`${planting}/${route}`)),
  );
}

function mixesToCome({ beds }: Pick<Round, "beds">): PublishedMix[] {
  return beds.flatMap(({ bed, mixes }) =>
    mixes
      .filter((mix) => !mix.given)
      .map((mix) => ({
        bed,
        route: mix.route,
        fed: mix.feedings.map(({ planting, crop, waterL }) => ({ planting, crop, waterL })),
        pours: poursOf(mix),
      })),
  );
}

/** What the bottles give, and from no bottle what is missing. */
function poursOf({ pours = [], stockMl }: CanMix): PublishedPour[] {
  const pouredMl = pours.reduce((sum, { ml }) => sum + ml, 0);
  const missingMl = Math.round((stockMl - pouredMl) * 100) / 100;
  return [
    ...pours.map(({ batch, ml }) => ({ batch, ml })),
    ...(missingMl > 0 ? [{ ml: missingMl, missing: true as const }] : []),
  ];
}

function batchesWith(
  told: readonly PublishedBatch[],
  { batches }: StockPlan,
  today: Day,
): PublishedBatch[] {
  const planned = batches.map((batch) => publishedBatch(batch, told, today));
  const ids = new Set(planned.map(({ id }) => id));
  const others = told
    .filter(({ id }) => !ids.has(id))
    .map((batch) => (batch.shellsOut > today ? { ...batch, withdrawn: true as const } : batch));
  return [...others, ...planned].sort((a, b) => a.number - b.number || byText(a.id, b.id));
}

function publishedBatch(
  batch: PlannedBatch,
  told: readonly PublishedBatch[],
  today: Day,
): PublishedBatch {
  const { id, number, volumeMl } = batch;
  const first = told.find((one) => one.id === id && one.withdrawn === undefined)?.first ?? today;
  const [shellsOut, acidIn, made] = (["dry-shells", "add-acid", "strain"] as const).map((step) =>
    dayOfStep(batch, step),
  ) as [Day, Day, Day];
  return { id, number, first, volumeMl, shellsOut, acidIn, made };
}

function shellsWith(
  earlier: Published | undefined,
  { shells: { saveFrom } }: StockPlan,
  today: Day,
): Pick<Published, "shells"> {
  const told = earlier?.shells;
  if (told !== undefined && told.day <= today) return { shells: told };
  if (saveFrom === undefined) return {};
  const first = told?.day === saveFrom ? told.first : today;
  return given({ shells: { day: saveFrom, first } });
}

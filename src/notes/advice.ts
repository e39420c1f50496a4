/** What is worth telling a grower although the garden file is right. */
import type { CropCatalogue } from "../crops/index.js";
import { daysBetween, earlier, later } from "../dates.js";
import { type Amounts, type Garden, shortDate, volumeText } from "../garden/index.js";
import type { Plan } from "../season/index.js";
import { batchName, type StockTables } from "../stock/index.js";
import { grouped } from "../values.js";
import { pickAdvice } from "./pick-advice.js";
import { warmthAdvice } from "./warmth-advice.js";
import { frostAdvice } from "./frost-advice.js";
import type { Advice } from "./advice-type.js";
import { wasteAdvice } from "./waste-advice.js";
import { verdictAdvice } from "./verdict-advice.js";
import { waterAdvice } from "./water-advice.js";

/** A drier or wetter watering than this share of the other's is uneven: common practice, no source. */
const unevenRatio = 2;

/** Fruit and heads suffer from a dry spell as long as this: common practice, no source. */
const longAwayDays = 7;

/**
 * What a grower might change in the garden file, the most telling first: nothing is wrong there.
 *
 * @param plan of that garden
 */
export function gardenAdvice(
  garden: Garden,
  plan: Plan,
  tables: Pick<StockTables, "making"> & {
    readonly catalogue: CropCatalogue;
  },
): Advice[] {
  return [
    ...needNoFeed(plan, tables.catalogue),
    ...askStrainer(plan),
    ...warmthAdvice(plan),
    ...pickAdvice(garden, plan),
    ...waterAdvice(garden, plan),
    ...verdictAdvice(plan),
    ...unevenWater(garden, plan),
    ...dryWhileAway(garden, plan),
    ...frostAdvice(garden, plan, tables.catalogue).map((told) => ({
      code: "frost",
      ...told,
    })),
    ...evenWaterFirst(plan),
    ...wastedStock(plan, tables),
    ...manyEntries(plan),
    ...unnamedGarden(garden),
  ];
}

/** Plantings of one crop for one reason in one line. */
function needNoFeed(plan: Plan, catalogue: CropCatalogue): Advice[] {
  const without = plan.plantings.filter((p) =>
    catalogue.crops.some((c) => c.key === p.crop && c.disorder === undefined),
  );
  const groups = grouped(without, ({ cropName, reason }) => `(${cropName}): ${reason}`);
  return [...groups].map(([why, those]) => {
    const plantings = those.map(({ id }) => id);
    return { code: "needs-no-feed", plantings, message: `${plantings.join(", ")} ${why}` };
  });
}

/** One question for all bottles whose strength rests on an answer. */
function askStrainer({ stock, today }: Plan): Advice[] {
  const unsure = (stock?.inHand ?? []).filter(
    ({ white, leftMl, useBy }) => white?.assumed && leftMl > 0 && useBy >= today,
  );
  if (unsure.length === 0) return [];
  return [
    {
      code: "ask-strained",
      plantings: [],
      message: `${unsure.map(({ id }) => batchName(id)).join(", ")}: strained through a mesh or a cloth? Write \`strained: mesh\` or \`strained: cloth\`; a mesh is taken, and after a cloth the same amount carries far less calcium`,
    },
  ];
}

/** Two plantings of one crop, one of them given much less water a plant. */
function unevenWater(garden: Garden, plan: Plan): Advice[] {
  const fed = new Set(plan.plantings.filter((p) => p.fed).map((p) => p.id));
  const counted = garden.beds.flatMap(({ plantings }) =>
    plantings.flatMap((p) =>
      p.plants === undefined || !fed.has(p.id) ? [] : [{ ...p, perPlantL: p.waterL / p.plants }],
    ),
  );
  const crops = [...new Set(counted.map((p) => p.crop))];
  return crops.flatMap((crop) => {
    const same = counted.filter((p) => p.crop === crop).sort((a, b) => a.perPlantL - b.perPlantL);
    const [dry, wet] = [same[0], same.at(-1)];
    if (!dry || !wet || wet.perPlantL < unevenRatio * dry.perPlantL) return [];
    return [
      {
        code: "uneven-water",
        plantings: [dry.id, wet.id],
        message: `${dry.id} gets ${volumeText(dry.perPlantL, garden.amounts)} a plant and ${wet.id} ${volumeText(wet.perPlantL, garden.amounts)}: is that meant? Uneven watering causes what the feed is to prevent`,
      },
    ];
  });
}

/** Where the garden file tells of watering, the longest dry gap says it. */
function dryWhileAway(garden: Garden, plan: Plan): Advice[] {
  const toldByWatering = new Set((plan.watering ?? []).map(({ bed }) => bed));
  return garden.feeding.away.flatMap((away) => {
    const days = daysBetween(away.from, away.to) + 1;
    const [from, to] = [away.from, away.to].map((day) => shortDate(day, garden.amounts));
    if (days < longAwayDays) return [];
    const meanwhile = plan.plantings.filter(
      (p) =>
        p.fed &&
        !toldByWatering.has(p.bed) &&
        p.stages.some(
          (span) =>
            fedStages(plan, p.rules).has(span.stage) &&
            later(span.from, away.from) <= earlier(span.to, away.to),
        ),
    );
    if (meanwhile.length === 0) return [];
    return [
      {
        code: "dry-while-away",
        plantings: meanwhile.map((p) => p.id),
        message: `you are away from ${from} to ${to} while ${meanwhile.map((p) => p.id).join(", ")} form fruit or heads: have someone water evenly, that matters more than the feed`,
      },
    ];
  });
}

function fedStages(plan: Plan, ruleIds: readonly string[]): ReadonlySet<string> {
  return new Set(plan.rules.filter((r) => ruleIds.includes(r.id)).flatMap((r) => r.stages));
}

const aWeek: Readonly<Record<Amounts, string>> = {
  metric: "25 mm (25 L per m2, 1 inch)",
  imperial: "25 mm (25 L per m2, 1 inch)",
  us: "1 inch (0.6 gal per ft2)",
};

// Government of New Brunswick, Vegetables frequently asked questions, undated: 2.5 cm a week.
function evenWaterFirst(plan: Plan): Advice[] {
  const fed = plan.plantings.filter((p) => p.fed);
  if (fed.length === 0) return [];
  const howMuch = plan.watering?.some(({ weeks }) => weeks.length > 0)
    ? "as much a week as the plan tells,"
    : `about ${aWeek[plan.garden.amounts]} a week`;
  return [
    {
      code: "even-water",
      plantings: fed.map((p) => p.id),
      message: `water evenly, ${howMuch} as a steady supply: the disorders follow swings of soil moisture more than a lack of calcium, and a soil test tells whether calcium is short at all`,
    },
  ];
}

/** More entries on one morning than anyone reads, each with its reminder: our choice. */
const mostBedEntries = 5;

function manyEntries({ garden, rounds }: Plan): Advice[] {
  const entries = Math.max(0, ...rounds.map(({ beds }) => beds.length));
  if (garden.calendar.group !== "bed" || entries <= mostBedEntries) return [];
  return [
    {
      code: "many-entries",
      plantings: [],
      message: `up to ${entries} calendar entries on one day, one a bed, each with its reminders: \`group: round\` under \`calendar:\` makes them one, which tells each bed in a line`,
    },
  ];
}

function wastedStock(plan: Plan, tables: Pick<StockTables, "making">): Advice[] {
  const message = wasteAdvice(plan, tables);
  return message === undefined ? [] : [{ code: "stock-thrown-away", plantings: [], message }];
}

function unnamedGarden(garden: Garden): Advice[] {
  return garden.idIsFromName
    ? [
        {
          code: "no-id",
          plantings: [],
          message: `the garden has no id: add \`id: ${garden.id}\`, so that a change of its name does not make all calendar entries new`,
        },
      ]
    : [];
}

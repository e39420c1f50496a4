/** A garden and its plan -> what can be ticked. */
// @ts-nocheck

import type { CropCatalogue } from "../crops/index.js";
import { addDays } from "../dates.js";
import type { Garden } from "../garden/index.js";
import { isKnownOn, type Sign } from "../rules/index.js";
import type { Plan, PlannedPlanting } from "../season/index.js";
import { batchName } from "../stock/index.js";
import { byText, grouped } from "../values.js";
import { stageWords } from "../words/index.js";
import { roundsToTick } from "./rounds-to-tick.js";
import { saidOfRounds } from "./said-of-rounds.js";
import type { PlantingToTick, TickSheet } from "./sheet.js";
import { listedBatches, standingOfDays } from "./standing.js";
import { stepsToTick } from "./steps-to-tick.js";
import { lookBackDays } from "./window.js";

export interface TickTables {
  readonly signs: readonly Sign[];
  readonly catalogue: CropCatalogue;
}

/** @param plan of that garden, as it is now */
export function tickSheet(garden: Garden, plan: Plan, tables: TickTables): TickSheet {
  const plantings = plantingsToTick(garden, plan, tables);
  const shown = new Set(plantings.flatMap(({ signs }) => signs.map(({ sign }) => sign)));
  const bottles = bottlesOf(garden, plan);
  return {
    amounts: garden.amounts,
    rounds: roundsToTick(garden, plan, saidOfRounds(garden, plan.published)),
    steps: stepsToTick(garden, plan, bottles),
    bottles,
    plantings,
    signs: tables.signs
      .filter(({ key }) => shown.has(key))
      .map(({ key, name }) => ({ sign: key, name })),
  };
}

function plantingsToTick(garden: Garden, plan: Plan, tables: TickTables): PlantingToTick[] {
  const crops = new Map(tables.catalogue.crops.map((crop) => [crop.key, crop]));
  const signsOf = grouped(garden.signs, (one) => one.planting);
  const seenOf = new Map(
    garden.beds.flatMap((bed) => bed.plantings.map((one) => [one.id, one.seen] as const)),
  );
  return plan.plantings
    .filter((planting) => isThereLately(planting, plan))
    .map(({ id, name, bedName, crop: key, stages }) => {
      const crop = crops.get(key);
      const signs = crop === undefined ? [] : tables.signs.filter((sign) => isKnownOn(sign, crop));
      return {
        ...{ id, name, bedName },
        stages: [...new Set(stages.map(({ stage }) => stage))].map((stage) => ({
          ...standingOfDays(
            (seenOf.get(id) ?? []).filter((one) => one.stage === stage),
            garden,
          ),
          ...{ stage, name: stageWords(stage) },
        })),
        signs: signs.map(({ key: sign }) => ({
          ...standingOfDays(
            (signsOf.get(id) ?? []).filter((one) => one.sign === sign),
            garden,
          ),
          sign,
        })),
      };
    });
}

/** Also one that is to be planted soon may have been already. */
function isThereLately({ stages }: PlannedPlanting, { today }: Plan): boolean {
  const [first, last] = [stages[0], stages.at(-1)];
  if (first === undefined || last === undefined) return false;
  return first.from <= addDays(today, lookBackDays) && last.to >= addDays(today, -lookBackDays);
}

/** In the garden file, and told by now; those given up are left out. */
function bottlesOf(garden: Garden, { published, today }: Plan): TickSheet["bottles"] {
  const listed = listedBatches(garden);
  const names = new Set(listed.flatMap(({ id, planned }) => [id, planned ?? id]));
  const told = published.batches.filter(
    ({ id, number, made, withdrawn }) =>
      made <= today && withdrawn === undefined && !names.has(id) && !names.has(String(number)),
  );
  const there = listed.filter(({ days: { missed, made, thrown_away: thrownAway } }) => {
    if (missed !== undefined || (made === undefined && thrownAway !== undefined)) return false;
    return thrownAway === undefined || thrownAway >= addDays(today, -lookBackDays);
  });
  return [...there, ...told]
    .map(({ id }) => ({ id, name: batchName(id) }))
    .sort((a, b) => byText(a.id, b.id));
}

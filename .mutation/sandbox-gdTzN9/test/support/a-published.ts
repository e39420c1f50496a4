// @ts-nocheck
import { addDays, day } from "../../src/dates.js";
import type {
  Published,
  PublishedBatch,
  PublishedMix,
  PublishedRound,
} from "../../src/published/published.js";

/** Each builder gives a valid value, first told on 1 March; a test states only what differs. */
export function aPublished(differs: Partial<Published> = {}): Published {
  return { rounds: [], feeds: [], batches: [], ...differs };
}

export function aPublishedRound(
  on: string,
  differs: Partial<Omit<PublishedRound, "first">> & { first?: string } = {},
): PublishedRound {
  const { first = "2027-03-01", ...more } = differs;
  return { day: day(on), mixes: [aPublishedMix()], ...more, first: day(first) };
}

/** 22 L on the tomatoes of the south bed with 55 mL from the first batch. */
export function aPublishedMix(differs: Partial<PublishedMix> = {}): PublishedMix {
  return {
    bed: "south",
    route: "drench",
    fed: [{ planting: "toms", crop: "tomato", waterL: 22 }],
    pours: [{ batch: "B1", ml: 55 }],
    ...differs,
  };
}

/** Begun four days before it is bottled, acid two days before. */
export function aPublishedBatch(
  made: string,
  differs: Partial<PublishedBatch> = {},
): PublishedBatch {
  const bottled = day(made);
  return {
    id: `batch-${made}`,
    number: 1,
    first: day("2027-03-01"),
    volumeMl: 1000,
    shellsOut: addDays(bottled, -4),
    acidIn: addDays(bottled, -2),
    made: bottled,
    ...differs,
  };
}

import { expect, test } from "vitest";
import { type GardenToTick, tickIndex } from "../../../src/outputs/tick/tick-index.js";

const garden = (title: string, more: Partial<GardenToTick> = {}): GardenToTick => ({
  ...{ title, address: title.toLowerCase(), hasProblems: false },
  ...more,
});

/** Titles in their order. */
function titlesIn(page: string): string[] {
  return [...page.matchAll(/class="garden" href="([^"]*)"/g)].map(([, address]) => address ?? "");
}

test("gardens stand by title, those of one title by address", () => {
  const twins = [garden("Weir", { address: "weir-2" }), garden("Weir", { address: "weir-1" })];
  const page = tickIndex([garden("Zinnia"), ...twins, garden("Älm"), garden("Beta")]);
  expect(titlesIn(page)).toEqual(["älm", "beta", "weir-1", "weir-2", "zinnia"]);
});

test("each says what it asks for, and that its file has a problem", () => {
  const asks = garden("Weir", { asks: "Today: 3 cans" });
  expect(tickIndex([asks])).toContain("Today: 3 cans");
  expect(tickIndex([asks])).not.toContain("has a problem");
  expect(tickIndex([garden("Weir", { hasProblems: true })])).toContain("has a problem");
});

test("where there is none, it says so", () => {
  expect(tickIndex([])).toContain("There are none yet.");
});

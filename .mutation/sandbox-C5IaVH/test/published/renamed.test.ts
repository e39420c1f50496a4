// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { withNewIds } from "../../src/published/renamed.js";
import { aGarden, planted, type PlantingDiffers } from "../support/a-garden.js";
import { aPublished, aPublishedMix, aPublishedRound } from "../support/a-published.js";

const fed = (planting: string, crop = "tomato") => ({ planting, crop, waterL: 12 });
const state = (...plantings: readonly ReturnType<typeof fed>[]) =>
  aPublished({
    rounds: ["2027-06-05", "2027-06-19"].map((on) =>
      aPublishedRound(on, { mixes: [aPublishedMix({ fed: plantings })] }),
    ),
  });
const renamedIn = (told: ReturnType<typeof state>, ...plantings: readonly PlantingDiffers[]) =>
  withNewIds(told, aGarden(planted(...plantings)), day("2027-06-12"));

describe("an id that vanished", () => {
  test("while one new id has its bed and crop is that one from now on", () => {
    const { published, renamed } = renamedIn(state(fed("toms")), { id: "moneymaker" });
    expect(renamed).toEqual([{ from: "toms", to: "moneymaker" }]);
    expect(published).toEqual(state(fed("moneymaker")));
  });

  test("is not taken for one that went before it", () => {
    const [before, after] = [state(fed("gone"), fed("toms")), state(fed("toms"))];
    const told = { ...before, rounds: [...before.rounds.slice(0, 1), ...after.rounds.slice(1)] };
    const { renamed } = renamedIn(told, { id: "moneymaker" });
    expect(renamed).toEqual([{ from: "toms", to: "moneymaker" }]);
  });

  test.each([
    ["while none is new", state(fed("toms"), fed("more")), [{ id: "more" }]],
    ["while two could be it", state(fed("toms")), [{ id: "a" }, { id: "b" }]],
    ["together with another", state(fed("toms"), fed("more")), [{ id: "a" }]],
    ["while the new one is another crop", state(fed("toms")), [{ id: "a", crop: "chili" }]],
  ])("stays what it was %s", (_, told, plantings) => {
    expect(renamedIn(told, ...plantings)).toEqual({ published: told, renamed: [] });
  });

  test("from another bed stays what it was", () => {
    const told = state(fed("toms"));
    const [bed] = planted({ id: "moneymaker" }).beds as object[];
    const garden = aGarden({ beds: [{ ...bed, id: "north" }] });
    expect(withNewIds(told, garden, day("2027-06-12")).renamed).toEqual([]);
  });
});

test("ids that are there change nothing", () => {
  const told = state(fed("toms"));
  expect(renamedIn(told, {}, { id: "more" })).toEqual({ published: told, renamed: [] });
});

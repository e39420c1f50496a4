// @ts-nocheck
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import type { MakingRules } from "../../../src/stock/making-rules.js";
import type { BatchSize, Recipe, RecipeMeans } from "../../../src/stock/making/recipe-types.js";
import { recipe } from "../../../src/stock/making/recipe.js";
import { good } from "../chemistry/chemistry-cases.js";
import { chemistry } from "../chemistry/chemistry-fixture.js";

const making = parse(
  readFileSync(new URL("../../../src/stock/making.yaml", import.meta.url), "utf8"),
) as MakingRules;
const citric: RecipeMeans = {
  acid: "citric",
  citricForm: "anhydrous",
  vinegarPercent: 5,
  shellPurity: 0.94,
  bottleMl: 500,
  eggs: { name: "EU M", dryShellG: 5.5 },
  temperatureC: 20,
};
const vinegar: RecipeMeans = { ...citric, acid: "vinegar" };
const litre: BatchSize = { by: "volume", makeMl: 1000 };
const make = (size: BatchSize = litre, means = citric): Recipe =>
  good(recipe(chemistry, making, size, means));

describe("a recipe for a litre", () => {
  test("makes a litre in two bottles", () => {
    expect(make().makesMl).toBeCloseTo(1000, 9);
    expect(make().bottles).toBe(2);
    expect(make(litre, { ...citric, bottleMl: 330 }).bottles).toBe(4);
  });

  test("takes the trade's tablespoon to the cup", () => {
    const r = make();
    expect(r.acidG / (r.waterMl / 1000)).toBeCloseTo(59, 9);
    expect(r.acidTablespoons).toBeCloseTo(r.acidG / 14.7, 9);
    // A cup of water to the tablespoon, within a tenth.
    const cups = r.waterMl / 236.6;
    expect(Math.abs((r.acidTablespoons ?? 0) / cups - 1)).toBeLessThan(0.1);
    expect(r.waterMl).toBeGreaterThan(950);
    expect(r.waterMl).toBeLessThan(1060);
  });

  test("leaves a fifth of the shell, so that the acid is spent", () => {
    const r = make();
    expect(r.shellLeftG / r.shellG).toBeCloseTo(0.2, 1);
    expect(r.eggs).toBe(Math.ceil(r.shellG / 5.5));
    expect(r.phFinished).toBeGreaterThan(7);
    expect(r.phWhileFizzing).toBeLessThan(6.2);
  });

  test("tells what shaking is worth", () => {
    const r = make();
    expect(r.shakenGPerL).toBeGreaterThan(16);
    expect(r.clearGPerL).toBeLessThan(0.25);
    expect(r.beforeCrystalsGPerL).toBeGreaterThan(14);
    const v = make(litre, vinegar);
    expect(v.shakenGPerL).toBe(v.clearGPerL);
    expect(v.crystalsG).toBe(0);
  });

  test("asks for an open vessel of four times the liquid, of a size that exists", () => {
    expect(make().vesselL).toBe(5);
    expect(make({ by: "volume", makeMl: 250 }).vesselL).toBe(1.5);
    expect(make({ by: "volume", makeMl: 100_000 }).vesselL).toBeGreaterThanOrEqual(400);
  });

  test("needs no water with vinegar, and says how much of it", () => {
    const v = make(litre, vinegar);
    expect(v.waterMl).toBe(0);
    expect(v.vinegarMl).toBeGreaterThan(1000);
    expect(v.acidG).toBeCloseTo((v.vinegarMl ?? 0) * 0.05, 9);
    expect(v.acidTablespoons).toBeUndefined();
  });

  test("takes more monohydrate than anhydrous acid for the same", () => {
    const m = make(litre, { ...citric, citricForm: "monohydrate" });
    // Its crystal water makes the batch half a percent larger.
    expect(m.acidG / make().acidG / (210.138 / 192.123)).toBeCloseTo(0.995, 3);
    expect(m.shakenGPerL).toBeCloseTo(make().shakenGPerL, 0);
  });

  test("takes times from the making rules", () => {
    const r = make(litre, vinegar);
    expect(r.reactionDays).toBe(making.reaction.vinegar.days);
    expect([r.dryDays, r.shelfDays, r.fridgeDays]).toEqual([
      making.dry_shells.days,
      making.shelf_life.shelf.days,
      making.shelf_life.fridge.days,
    ]);
  });
});

describe("a recipe sized from what is there", () => {
  test("of thirty shells uses thirty shells", () => {
    const r = make({ by: "shells", eggs: 30 });
    expect(r.eggs).toBe(30);
    expect(r.shellG).toBeCloseTo(165, 9);
  });

  test("of fifty grams of acid uses fifty grams", () => {
    expect(make({ by: "acid", grams: 50 }).acidG).toBeCloseTo(50, 9);
    const v = make({ by: "acid", grams: 1005 }, vinegar);
    expect(v.vinegarMl).toBeCloseTo(1000, 9);
  });

  test("comes back to itself from any of its own amounts", () => {
    const means = fc.constantFrom(citric, vinegar, {
      ...citric,
      citricForm: "monohydrate" as const,
    });
    fc.assert(
      fc.property(fc.double({ min: 50, max: 20_000, noNaN: true }), means, (makeMl, m) => {
        const r = make({ by: "volume", makeMl }, m);
        const byShells = make({ by: "shells", eggs: r.shellG / 5.5 }, m);
        expect(byShells.makesMl).toBeCloseTo(makeMl, 4);
        const grams = m.acid === "citric" ? r.acidG : (r.vinegarMl ?? 0) * 1.005;
        expect(make({ by: "acid", grams }, m).makesMl).toBeCloseTo(makeMl, 4);
      }),
      { numRuns: 30 },
    );
  });

  test("has the same strength and pH at any size", () => {
    const small = make({ by: "volume", makeMl: 100 });
    expect(small.shakenGPerL).toBeCloseTo(make().shakenGPerL, 9);
    expect(small.phFinished).toBeCloseTo(make().phFinished, 9);
  });

  test("gives a litre of gas for a litre of gas at any size", () => {
    expect(make({ by: "volume", makeMl: 2000 }).carbonDioxideL).toBeCloseTo(
      2 * make().carbonDioxideL,
      6,
    );
  });
});

describe("what is no recipe", () => {
  const messages = (size: BatchSize, means: RecipeMeans = citric): string[] => {
    const result = recipe(chemistry, making, size, means);
    return result.ok ? [] : result.problems.map((p) => p.message);
  };

  test("makes nothing, or less", () => {
    for (const size of [
      { by: "volume", makeMl: 0 },
      { by: "shells", eggs: -3 },
      { by: "acid", grams: NaN },
    ] as const)
      expect(messages(size)).toHaveLength(1);
  });

  test("has vinegar without acid, or of 120 %", () => {
    expect(messages(litre, { ...vinegar, vinegarPercent: 0 })).toHaveLength(1);
    expect(messages(litre, { ...vinegar, vinegarPercent: 120 })).toEqual(["vinegar of 120 %"]);
  });

  test("has shell without carbonate, or bottles without room", () => {
    expect(messages(litre, { ...citric, shellPurity: 0, bottleMl: 0 })).toHaveLength(2);
  });

  test("boils", () => {
    expect(messages(litre, { ...citric, temperatureC: 101 })).toHaveLength(1);
  });
});

describe("the steps", () => {
  const steps = make().steps;
  const step = (key: string) => steps.find((s) => s.key === key);

  test("go from shells to use in order of days", () => {
    expect(steps.map((s) => s.key)).toEqual([
      "dry-shells",
      "grind",
      "mix",
      "wait",
      "check",
      "strain",
      "store",
      "use",
    ]);
    const days = steps.map((s) => s.dayFromStart);
    expect(days).toEqual([...days].sort((a, b) => a - b));
    expect(days.at(-1)).toBe(making.dry_shells.days + making.reaction.citric.days);
  });

  test("caution where the danger is", () => {
    expect(step("dry-shells")?.cautions.join()).toMatch(/salmonella.*scald/i);
    expect(step("grind")?.cautions.join()).toMatch(/dust/);
    expect(step("mix")?.cautions.join()).toMatch(/foam.*never close.*eyes/is);
    expect(step("store")?.cautions.join()).toMatch(/not for drinking.*mouldy/is);
    expect(step("use")?.cautions.join()).toMatch(/local rules/);
  });

  test("name the amounts", () => {
    const r = make();
    expect(step("mix")?.text).toContain(`${Math.round(r.acidG)} g of citric acid (anhydrous`);
    expect(step("mix")?.text).toContain("at least 5 L");
    expect(step("grind")?.text).toContain(`${Math.round(r.shellG)} g`);
    expect(step("strain")?.text).toContain("2 bottles of 500 mL");
  });

  test("count eggs of the size that they are", () => {
    const small = { name: "EU S", dryShellG: 4.7 };
    const r = make(litre, { ...citric, eggs: small });
    expect(r.eggs).toBe(Math.ceil(r.shellG / 4.7));
    expect(r.steps.find(({ key }) => key === "grind")?.text).toContain(`${r.eggs} eggs, EU S`);
    expect(r.shellG).toBeCloseTo(make().shellG, 9);
    expect(r.eggs).toBeGreaterThan(make().eggs);
  });

  test("count spoons to the half, and small amounts in teaspoons", () => {
    const mixOf = (g: number) =>
      make({ by: "acid", grams: g }).steps.find((s) => s.key === "mix")?.text;
    expect(mixOf(14)).toContain("1 level tablespoon,");
    expect(mixOf(50)).toContain("3.5 level tablespoons,");
    expect(mixOf(7)).toContain("1.5 level teaspoons,");
    expect(mixOf(1)).toContain("0.5 level teaspoon,");
  });

  test("tell of the white crystals only where they come", () => {
    expect(step("strain")?.text).toMatch(
      /no cloth or paper.*white already.*turns white.*12 g: it counts/,
    );
    expect(step("use")?.text).toMatch(/shake the bottle and stir the can/);
    const ofVinegar = make(litre, vinegar).steps;
    expect(ofVinegar.find((s) => s.key === "strain")?.text).not.toMatch(/white/);
    expect(ofVinegar.find((s) => s.key === "use")?.text).toMatch(/all dissolved/);
  });
});

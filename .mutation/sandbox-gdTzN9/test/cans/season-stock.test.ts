// @ts-nocheck
import { describe, expect, it } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { shortDay } from "../../src/garden/index.js";
import type { Plan } from "../../src/season/season-plan.js";
import { loadTables } from "../../src/tables.js";
import { gardenText, planFile, planted } from "../support/a-garden.js";

describe("a bottle whose measured pH tells that it is still acid", () => {
  const today = day("2027-06-25");
  const toms = { id: "toms", crop: "tomato", plants: 6, transplanted: "2027-05-20" };
  const bottle = { volume: "500 mL", keep: "fridge" };
  const plan = planOf({
    ...planted(toms),
    stock: {
      batches: [
        { ...bottle, id: "old", made: "2027-06-01" },
        { ...bottle, id: "sour", made: "2027-06-02", ph: 4 },
      ],
    },
    log: [{ on: "2027-06-20", planting: "toms", stock: "30 mL" }],
  });
  const readyOn = addDays(today, loadTables().making.reaction.citric.days);

  it("is told of, with what to do", () => {
    const warning = plan.warnings.find(({ code }) => code === "stock-not-ready");
    expect(warning?.message).toContain("batch sour");
    expect(warning?.message).toContain(shortDay(readyOn, "metric"));
    expect(warning?.mend).toContain("shell");
  });

  it("is not poured before it is ready", () => {
    const draws = plan.stock?.making.draws ?? [];
    expect(draws.length).toBeGreaterThan(0);
    expect(draws.filter((d) => d.batch === "sour" && d.day < readyOn)).toEqual([]);
  });

  it("has no stock taken off for what the log gave from the bottle in turn", () => {
    const opening = plan.stock?.making.account.map(({ batch, openingMl }) => [batch, openingMl]);
    expect(opening).toEqual(
      expect.arrayContaining([
        ["old", 470],
        ["sour", 500],
      ]),
    );
  });

  function planOf(differs: Parameters<typeof gardenText>[0]): Plan {
    const planned = planFile(gardenText(differs), undefined, today);
    if (!planned.ok) throw new Error(planned.problems.map((p) => p.message).join("\n"));
    return planned.value;
  }
});

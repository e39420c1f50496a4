/** Sums of warmth: what each rests on, and that they can stand in one life. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { type StageName, stageNames } from "../../src/crops/crop.js";
import { catalogue, courseRows, cropRows, lengthRows, warmthRows } from "./data-files.js";

type Row = (typeof warmthRows)[number];

const stagesOf = (row: Row): readonly StageName[] => {
  const crop = cropRows.find(({ key }) => key === row.crop);
  return courseRows.find(({ key }) => key === crop?.course)?.stages.map((s) => s.stage) ?? [];
};
const lengthsOf = ({ crop }: Row): typeof lengthRows => lengthRows.filter((l) => l.crop === crop);

describe.each(warmthRows.map((row) => [row.crop, row] as const))("%s", (_, row) => {
  test("has its sums in the order of its life, each larger than the last, from one event", () => {
    const stages = stagesOf(row);
    const order = row.sums.map(({ stage }) => stages.indexOf(stage));
    expect(order).not.toContain(-1);
    expect(order).toEqual([...new Set(order)].sort((a, b) => a - b));
    for (const [i, { degree_days, least, most }] of row.sums.entries()) {
      const before = row.sums[i - 1];
      expect(least).toBeLessThanOrEqual(degree_days);
      expect(most).toBeGreaterThanOrEqual(degree_days);
      expect(degree_days).toBeGreaterThan(before?.degree_days ?? 0);
      expect(least).toBeGreaterThan(before?.least ?? 0);
      expect(most).toBeGreaterThan(before?.most ?? 0);
    }
    expect(new Set(row.sums.map(({ from }) => from)).size).toBeLessThanOrEqual(1);
    const [first] = row.sums;
    if (stageNames.some((name) => name === first?.from))
      expect(stages.indexOf(first?.from as StageName)).toBeLessThan(order[0] ?? -1);
  });

  test("has degree days for rows of its own, in their order, and says how they were reckoned", () => {
    const ids = lengthsOf(row).map(({ id }) => id);
    const known = row.rows.map(({ row: id }) => id);
    expect(known).toEqual(ids.filter((id) => known.includes(id)));
    expect(row.rows_source !== undefined).toBe(row.rows.length > 0);
    expect(row.sums.length + row.rows.length).toBeGreaterThan(0);
  });

  test("gains less in a day than there is between its limits", () => {
    const span = (row.upper_c ?? 40) - row.base_c;
    for (const sums of row.rows) {
      const length = lengthsOf(row).find(({ id }) => id === sums.row);
      expect(sums.initial).toBeLessThan((length?.initial_days ?? 0) * span);
      expect(sums.development).toBeLessThan((length?.development_days ?? 0) * span);
      expect(sums.mid).toBeLessThan((length?.mid_days ?? 0) * span);
      expect(sums.late).toBeLessThan((length?.late_days ?? 0) * span);
    }
  });

  test("names its sources", () => {
    for (const { source } of [row, ...row.sums]) expect(source.length).toBeGreaterThan(20);
  });
});

test("each crop has one row at most, and flowers after a crop that is known", () => {
  const keys = cropRows.map(({ key }) => key);
  const crops = warmthRows.map(({ crop }) => crop);
  expect(new Set(crops).size).toBe(crops.length);
  expect(keys).toEqual(expect.arrayContaining(crops));
  for (const { flowers_after } of warmthRows)
    if (flowers_after !== undefined) expect(keys).toContain(flowers_after);
});

test("the catalogue joins them, with the least and the most of a crop's rows", () => {
  const tomato = catalogue.crops.find(({ key }) => key === "tomato")?.warmth;
  expect(tomato).toMatchObject({ auto: true, method: "single-sine", baseC: 7, upperC: 28 });
  expect(tomato?.sums).toMatchObject([
    { stage: "flowering", from: "transplanting", degreeDays: 281, least: 150, most: 525 },
  ]);
  expect(tomato?.rows[0]).toMatchObject({
    row: "mediterranean-apr-may",
    leastTotal: 1421,
    mostTotal: 2349,
  });
  expect(catalogue.crops.find(({ key }) => key === "beetroot")).not.toHaveProperty("warmth");
});

/** Coefficient of variation of a sample. */
function variation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1)) / mean;
}

interface Spread {
  readonly days: number;
  readonly degreeDays: number;
}

/** Spread of the whole life over the crop's own rows; proxies are no evidence of its own. */
function spreadOf(row: Row): Spread | undefined {
  const totals = row.rows.flatMap(({ row: id, initial, development, mid, late }) => {
    const length = lengthsOf(row).find((l) => l.id === id);
    if (length === undefined || length.note?.includes("proxy")) return [];
    const { initial_days, development_days, mid_days, late_days } = length;
    return [
      {
        days: initial_days + development_days + mid_days + late_days,
        degreeDays: initial + development + mid + late,
      },
    ];
  });
  return totals.length < 3
    ? undefined
    : {
        days: variation(totals.map(({ days }) => days)),
        degreeDays: variation(totals.map(({ degreeDays }) => degreeDays)),
      };
}

test("is followed unasked only with a sum of its own, or where rows differ less in warmth", async () => {
  const lines = warmthRows.map((row) => {
    const spread = spreadOf(row);
    const falls = spread !== undefined && spread.degreeDays < spread.days;
    if (row.auto) expect(row.sums.length > 0 || falls, row.crop).toBe(true);
    const shown = spread
      ? `rows differ by ${(spread.days * 100).toFixed(1)} % in days, ${(spread.degreeDays * 100).toFixed(1)} % in degree days`
      : "fewer than three rows of its own";
    const sums = row.sums.map(({ stage, degree_days }) => `${stage} ${degree_days}`).join(", ");
    return `${row.crop}: ${row.auto ? "follows warmth" : "on the calendar"}; ${shown}; ${sums === "" ? "no sum of its own" : sums}\n`;
  });
  await expect(lines.join("")).toMatchFileSnapshot("../golden/warmth.txt");
});

// @ts-nocheck
import { describe, expect, test } from "vitest";
import { cropRows, lengthRows } from "./data-files.js";

const fao = (source: string): boolean =>
  source.startsWith("FAO Irrigation and Drainage Paper 56") && source.includes("Table 11");

describe.each(lengthRows.map((row) => [row.crop, row.region, row] as const))(
  "%s in %s",
  (_c, _r, row) => {
    const sum = row.initial_days + row.development_days + row.mid_days + row.late_days;

    test("adds up to its printed total, or says that the source itself does not", () => {
      if (row.printed_total_days === undefined) expect(fao(row.source)).toBe(false);
      else if (sum !== row.printed_total_days)
        expect(row.note).toMatch(/printed total \d+, though/);
    });

    test("comes from a printed row, or is marked as not confirmed", () => {
      expect(row.printed_name === undefined).toBe(!fao(row.source));
      if (row.printed_name === undefined) expect(row.source).toMatch(/common practice, no source$/);
    });
  },
);

test("one printed row alone does not add up: sweet maize in Idaho", () => {
  const odd = lengthRows.filter(
    (row) =>
      row.printed_total_days !== undefined &&
      row.initial_days + row.development_days + row.mid_days + row.late_days !==
        row.printed_total_days,
  );
  expect(odd.map((row) => [row.crop, row.region])).toEqual([["sweetcorn", "Idaho, USA"]]);
});

test("a row borrowed from another crop says so", () => {
  const own: Record<string, string> = {
    "sweet-pepper": "Sweet peppers",
    eggplant: "Egg plant",
    zucchini: "Squash, Zucchini",
    peanut: "Groundnut",
    "green-bean": "Beans (green)",
    "broad-bean": "Faba bean",
    onion: "Onion (dry)",
    "spring-onion": "Onion (green)",
    beetroot: "Beets, table",
    sweetcorn: "Maize, sweet",
    watermelon: "Water melons",
  };
  for (const row of lengthRows) {
    if (row.printed_name === undefined) continue;
    const name = own[row.crop] ?? row.crop.replaceAll("-", " ");
    const ownRow = row.printed_name.toLowerCase().startsWith(name.toLowerCase());
    const group = row.printed_name === "Crucifers" && row.note?.includes("group row");
    if (!ownRow) expect(group === true || row.note?.includes("proxy"), row.crop).toBe(true);
    if (ownRow) expect(row.note ?? "", row.crop).not.toMatch(/proxy/);
  }
});

test("rows of one crop differ in months or region, so that a choice between them has a ground", () => {
  for (const crop of cropRows) {
    const grounds = lengthRows
      .filter((row) => row.crop === crop.key)
      .map((row) => `${row.planted_months.join()} ${row.region} ${String(row.printed_total_days)}`);
    expect(new Set(grounds).size, crop.key).toBe(grounds.length);
  }
});

test("rows have ids that are unique in their crop, short, and tell region and months", () => {
  const months = "jan feb mar apr may jun jul aug sep oct nov dec".split(" ");
  for (const crop of cropRows) {
    const rows = lengthRows.filter((row) => row.crop === crop.key);
    expect(new Set(rows.map(({ id }) => id)).size, crop.key).toBe(rows.length);
    for (const { id, region, planted_months } of rows) {
      expect(id.length).toBeLessThanOrEqual(36);
      expect(region.toLowerCase()).toContain(id.split("-")[0]?.replace(/s$/, ""));
      const named = id.split("-").filter((word) => months.includes(word));
      const ends = [planted_months[0], planted_months.at(-1)].flatMap(
        (m) => months[(m ?? 0) - 1] ?? [],
      );
      expect([named[0], named.at(-1)].filter((m) => m !== undefined)).toEqual(ends);
    }
  }
});

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

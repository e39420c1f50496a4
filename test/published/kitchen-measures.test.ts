/** Eggs, shells and spoons as they are weighed and measured; each title names its source. */
import { describe, expect, test } from "vitest";
import eggSizes from "../../src/compiled/egg-sizes.js";
import { chemistry } from "../stock/chemistry/chemistry-fixture.js";

// NIST Handbook 44, Appendix C: exact by definition.
const gPerOunce = 28.349523125;
const gPerPound = 16 * gPerOunce;
const mlPerQuart = 946.352946;
const mlPerTablespoon = mlPerQuart / 64;

interface EggRow {
  readonly key: string;
  readonly least_g?: number;
  readonly below_g?: number;
  readonly dry_shell_g: number;
}
const rows: readonly EggRow[] = eggSizes().egg_sizes;
const rowOf = (key: string): EggRow => {
  const row = rows.find((egg) => egg.key === key);
  if (row === undefined) throw new Error(`no ${key}`);
  return row;
};

describe("USDA weight classes: least ounces of a dozen", () => {
  test.each([
    ["us-small", 18],
    ["us-medium", 21],
    ["us-large", 24],
    ["us-extra-large", 27],
    ["us-jumbo", 30],
  ])("%s: %d", (key, ouncesADozen) => {
    expect(rowOf(key).least_g).toBeCloseTo((ouncesADozen * gPerOunce) / 12, 1);
  });
});

test("Commission Regulation (EC) 589/2008: S under 53 g, M from 53, L from 63, XL from 73", () => {
  const classes = ["eu-s", "eu-m", "eu-l", "eu-xl"].map(rowOf);
  expect(classes.map((egg) => egg.least_g)).toEqual([undefined, 53, 63, 73]);
  expect(classes.map((egg) => egg.below_g)).toEqual([53, 63, 73, undefined]);
});

test.each(rows.map((row) => [row.key, row] as const))(
  "dry shell is 8 to 12 %% of an egg (encyclopedias): %s",
  (_, { least_g: least, below_g: below, dry_shell_g: shellG }) => {
    // Open classes reach some 10 g further.
    expect(shellG / (least ?? (below ?? NaN) - 10)).toBeGreaterThan(0.08);
    expect(shellG / (below ?? (least ?? NaN) + 10)).toBeLessThan(0.12);
  },
);

test("Butcher and Miles, University of Florida extension: 5.5 g of dry shell on a large egg", () => {
  expect(rowOf("us-large").dry_shell_g).toBe(5.5);
});

test("the larger the egg, the more shell", () => {
  for (const land of ["us-", "eu-"]) {
    const shells = rows.filter(({ key }) => key.startsWith(land)).map((row) => row.dry_shell_g);
    expect(shells).toEqual([...shells].sort((a, b) => a - b));
    expect(new Set(shells).size).toBe(shells.length);
  }
});

describe("level US tablespoons", () => {
  const { citricPerTablespoonG, shellPowderPerTablespoonG, shellCrushedPerTablespoonG } =
    chemistry.kitchen;

  test("of crushed shell: a growers' handbook, 1 quart weighs 1.6 lb (0.77 g/mL)", () => {
    const gPerMl = (1.6 * gPerPound) / mlPerQuart;
    expect(gPerMl).toBeCloseTo(0.77, 2);
    expect(shellCrushedPerTablespoonG.value).toBeCloseTo(gPerMl * mlPerTablespoon, 1);
  });

  test("of shell as fine as flour: a page on raw feeding, 6.1 g weighed in a teaspoon", () => {
    expect(shellPowderPerTablespoonG.value).toBeCloseTo(3 * 6.1, 1);
  });

  test("of powder hold more than of crushed shell, and less than of solid calcite (2.71 g/mL)", () => {
    expect(shellPowderPerTablespoonG.value).toBeGreaterThan(shellCrushedPerTablespoonG.value);
    expect(shellPowderPerTablespoonG.value).toBeLessThan(2.71 * mlPerTablespoon);
  });

  test("of citric acid: Eisenman, The Home Winemaker's Manual, 4.9 g to the teaspoon; a kitchen page, 15 g", () => {
    expect(citricPerTablespoonG.value).toBeCloseTo(3 * 4.9, 1);
    expect(Math.abs(citricPerTablespoonG.value / 15 - 1)).toBeLessThan(0.03);
  });
});

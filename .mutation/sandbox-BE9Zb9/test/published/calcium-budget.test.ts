/** Need, soil, water and amendments against what was printed; each title names its source. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { loadTables } from "../../src/tables.js";
import { amount } from "../data/data-files.js";
import { bedWith, sumOf, verdictOf } from "../calcium/a-sum.js";

const { uptake, amendments, limits } = loadTables().calcium;

// Arithmetic: 0.45359237 kg on 4046.8564224 m2.
const gPerM2OfLbPerAcre = (0.45359237 * 1000) / 4046.8564224;
const gPerM2OfKgPerHa = 0.1;
// Molar masses: Ca 40.078, O 15.999, CO3 60.008.
const calciumInOxide = 40.078 / (40.078 + 15.999);
const calciumInCarbonate = 40.078 / (40.078 + 60.008);

type Row = (typeof uptake.uptake)[number];

function row(crop: string, source: string): Row {
  const found = uptake.uptake.find((one) => one.crop === crop && one.source.includes(source));
  if (found === undefined) throw new Error(`uptake.yaml has no row of ${crop} by ${source}`);
  return found;
}

/** A figure of a table has two digits; what is worked out from print agrees within half of the last. */
const near = (value: number | undefined, printed: number) => {
  expect(value).toBeDefined();
  expect(Math.abs((value ?? 0) / printed - 1)).toBeLessThan(0.025);
};

describe("whole plants", () => {
  test("Horticultura Brasileira 41, 2023 (tomato): 95 kg/ha, 5.0 g a plant, so 19,000 plants a hectare", () => {
    const tomato = row("tomato", "Horticultura Brasileira 41");
    near(tomato.per_m2_g?.low, 95 * gPerM2OfKgPerHa);
    near(tomato.per_plant_g?.low, 5);
    near((tomato.per_m2_g?.low ?? 0) / (tomato.per_plant_g?.low ?? 0), 19_000 / 10_000);
  });

  test("a fertiliser maker (tomato): 152 lb of calcium an acre", () => {
    near(row("tomato", "fertiliser maker").per_m2_g?.high, 152 * gPerM2OfLbPerAcre);
  });

  test("Scientia Agricola 61(1):62, 2004 (pepper): 2.6 g a plant", () => {
    near(row("sweet-pepper", "Scientia Agricola").per_plant_g?.low, 2.6);
  });

  test("Horticultura Brasileira 30(1), 2012 (pepper): 3.25 g a plant, 0.7 kg to each of 97.3 t/ha", () => {
    const pepper = row("sweet-pepper", "Horticultura Brasileira 30");
    near(pepper.per_plant_g?.low, 3.25);
    near(pepper.per_m2_g?.low, 0.7 * 97.3 * gPerM2OfKgPerHa);
  });

  test("Azofeifa and Moreira, 2005 (pepper): 38 kg/ha with 20,833 plants a hectare", () => {
    const pepper = row("sweet-pepper", "Azofeifa");
    near(pepper.per_m2_g?.low, 38 * gPerM2OfKgPerHa);
    near(pepper.per_plant_g?.low, 38_000 / 20_833);
    expect(pepper.source_status).toBe("weak source");
  });

  test("Anais ESALQ 25, 1968 (eggplant): 43.1 kg/ha with 20,000 plants a hectare", () => {
    const eggplant = row("eggplant", "ESALQ");
    near(eggplant.per_m2_g?.low, 43.1 * gPerM2OfKgPerHa);
    near(eggplant.per_plant_g?.low, 43_100 / 20_000);
  });

  test("Revista Caatinga, about 2014: 110.1 kg/ha (cantaloupe), 84.1 kg/ha (yellow melon)", () => {
    near(row("cantaloupe", "Caatinga").per_m2_g?.low, 110.1 * gPerM2OfKgPerHa);
    near(row("sweet-melon", "Caatinga").per_m2_g?.low, 84.1 * gPerM2OfKgPerHa);
  });

  test("a Japanese muskmelon trial: 10.1 to 10.7 g of CaO a plant, 0.7147 of it calcium", () => {
    expect(calciumInOxide).toBeCloseTo(0.7147, 4);
    const melon = row("cantaloupe", "Japanese");
    near(melon.per_plant_g?.low, 10.1 * calciumInOxide);
    near(melon.per_plant_g?.high, 10.7 * calciumInOxide);
  });

  test("Revista Caatinga, about 2013 (carrot): 91.7 kg/ha, 0.155 g a plant of 590,000 a hectare", () => {
    const carrot = row("carrot", "Caatinga");
    near(carrot.per_m2_g?.low, 91.7 * gPerM2OfKgPerHa);
    near(carrot.per_plant_g?.low, 91_700 / 590_000);
  });

  test("Agronomy Journal 80, 1988 (potato): 8.5 kg/ha in tubers and 32.9 in tops", () => {
    near(row("potato", "Agronomy Journal").per_m2_g?.low, (8.5 + 32.9) * gPerM2OfKgPerHa);
  });

  test("J. Amer. Soc. Hort. Sci. 134(1):3, 2009 (apple): 14.2 g a tree of 18.8 kg at 52.45 t/ha; 36 lb/acre", () => {
    const apple = row("apple", "Cheng");
    near(apple.per_plant_g?.low, 14.2);
    near(apple.per_m2_g?.low, (14.2 * 52_450) / 18.8 / 10_000);
    near(apple.per_m2_g?.low, 36 * gPerM2OfLbPerAcre);
  });

  test("South African Journal of Plant and Soil, about 2011 (apple): 0.5 to 1.9 g/kg at 45.2 t/ha", () => {
    const apple = row("apple", "Kangueehi");
    near(apple.per_m2_g?.low, 0.5 * 4.52);
    near(apple.per_m2_g?.high, 1.9 * 4.52);
  });

  test("La Malfa, 1992, as quoted (strawberry): 29 to 68 kg of CaO a hectare", () => {
    const berry = row("strawberry", "La Malfa");
    near(berry.per_m2_g?.low, 29 * calciumInOxide * gPerM2OfKgPerHa);
    near(berry.per_m2_g?.high, 68 * calciumInOxide * gPerM2OfKgPerHa);
  });

  test("New England Vegetable Management Guide, Table 4 (celery, tops and roots): 110 lb/acre", () => {
    near(row("celery", "New England").per_m2_g?.low, 110 * gPerM2OfLbPerAcre);
  });

  test("the same table's harvested parts (cabbage 28 lb/acre, lettuce 13) are no need", () => {
    const crops = uptake.uptake.map(({ crop }) => crop);
    for (const crop of ["cabbage", "cauliflower", "kale", "lettuce", "green-bean", "onion"])
      expect(crops).not.toContain(crop);
  });

  test("Horticultura Brasileira 25(3), 2007 (pumpkin, fruit only, 8.8 kg/ha) is no need: a kin's whole plant is", () => {
    const pumpkin = sumOf(bedWith({ area: "10 m2" }, { crop: "pumpkin", plants: undefined })).need;
    expect(pumpkin?.borrowedFrom).toContain("cantaloupe");
    near(pumpkin?.perM2G?.low, 11);
  });
});

describe("soil", () => {
  const tested = (differs: Readonly<Record<string, unknown>>) =>
    bedWith({ soil: { test: { on: "2027-02-01", ph: 6.5, ...differs } } });
  const kindBy = (extract: string, calcium: string, ph = 6.5) =>
    verdictOf(tested({ extract, calcium, ph })).kind;
  const perM2G = (differs: Readonly<Record<string, unknown>>) =>
    sumOf(tested({ extract: "mehlich-3", ...differs })).soil?.perM2G?.low;

  test("agronomy course notes: most surface soil near 1.2 g/cm3, so 1000 ppm over 20 cm is 240 g/m2", () => {
    expect(perM2G({ calcium: "1000 ppm" })).toBeCloseTo(240, 9);
    expect(perM2G({ calcium: "1000 ppm", density: "1.8 kg/L" })).toBeCloseTo(360, 9);
  });

  test("Rutgers NJAES, Mehlich-3: high, the optimum, from 1401 lb/acre; medium from 1008 to 1400", () => {
    expect(kindBy("mehlich-3", "1401 lb/acre")).toBe("unlikely-soil-has-enough");
    expect(kindBy("mehlich-3", "1399 lb/acre")).toBe("cannot-tell");
    expect(kindBy("mehlich-3", "1008 lb/acre")).toBe("cannot-tell");
    expect(amount("1790 lb/acre", "soil-content")).toBe(895);
  });

  test("University of Massachusetts, sample report, 2014, modified Morgan: optimum from 1000 ppm", () => {
    expect(kindBy("modified-morgan", "1000 ppm")).toBe("unlikely-soil-has-enough");
    expect(kindBy("modified-morgan", "990 ppm")).toBe("cannot-tell");
  });

  test("Oregon State University EC 1478, 2011 (from memory), ammonium acetate: low below 5 meq/100 g", () => {
    expect(kindBy("ammonium-acetate", "5 meq/100 g")).toBe("unlikely-soil-has-enough");
    expect(kindBy("ammonium-acetate", "4.9 meq/100 g")).toBe("cannot-tell");
  });

  test("agronomy course notes: 4 meq of calcium in 100 g are 800 ppm", () => {
    near(amount("4 meq/100 g", "soil-content"), 800);
  });

  test("Spectrum Analytic, CEC and percent saturation: 400 lb/acre are 1 meq/100 g", () => {
    near(amount("400 lb/acre", "soil-content"), amount("1 meq/100 g", "soil-content"));
  });

  test("Swift (Colorado State University): below pH 5.5 lime, not feeding, is the answer", () => {
    expect(kindBy("mehlich-3", "400 ppm", 5.4)).toBe("lime-first");
    expect(limits.lime_first_ph.value).toBe(5.5);
  });

  test("University of Massachusetts, soilless media report: 75 to 250 ppm in a saturated extract, never beside soil's", () => {
    expect(kindBy("saturated", "250 ppm")).toBe("cannot-tell");
    expect(perM2G({ extract: "saturated", calcium: "250 ppm" })).toBeUndefined();
  });
});

describe("water", () => {
  const brought = (hardness: string, waterL: number) =>
    sumOf({ ...bedWith({ area: "1 m2" }), source_water: { hardness } }, { waterL }).water?.perM2G;

  test("molar masses: 40.04 % of hardness as CaCO3 is calcium, were there no magnesium", () => {
    near(limits.calcium_in_hardness.value, calciumInCarbonate);
  });

  test("garden.org: an inch a week, 25 L/m2; in 16 weeks water of 90 mg/L brings at most 14.4 g/m2", () => {
    const { low = 0, high = 0 } = brought("90 mg/L", 16 * 25) ?? {};
    near(low / limits.calcium_share_of_hardness.low, 14.4);
    near(high / limits.calcium_share_of_hardness.high, 14.4);
    expect(high).toBeLessThan(14.4);
  });

  test("the same of soft water, 30 mg/L, at most 4.8 g/m2; of chalk, 300 mg/L, 48 g/m2", () => {
    near((brought("30 mg/L", 400)?.high ?? 0) / 0.9, 4.8);
    near((brought("300 mg/L", 400)?.high ?? 0) / 0.9, 48);
  });

  test("a table of hardness: 1 ppm is 0.056 German degrees, so 5.04 of them are 90 mg/L", () => {
    near(brought("5.04 dH", 400)?.high, brought("90 mg/L", 400)?.high ?? 0);
  });
});

describe("amendments", () => {
  const spread = (what: string, dose: string, fineness?: string) =>
    sumOf(
      bedWith({
        area: "1 m2",
        amendments: [{ on: "2027-03-01", what, amount: dose, fineness }],
      }),
    ).amendments[0];
  const percentOf = (fineness: string) => {
    const lime = spread("limestone", "1 kg", fineness);
    const { low = 0, high = 0 } = lime?.thisSeason.wholeG ?? {};
    return [(low / 332) * 100, (high / 400) * 100].map(Math.round);
  };

  test("K-State, Blossom end rot: 1 lb of gypsum on 100 sq ft is 49 g/m2, 9 to 11 g of calcium", () => {
    const gypsum = spread("gypsum", "1 lb per 100 ft2");
    near(gypsum?.amountG, 48.8);
    near(gypsum?.thisSeason.perM2G?.low, 48.8 * 0.19);
    near(gypsum?.thisSeason.perM2G?.high, 48.8 * 0.23);
  });

  test("an extension note, 1991: 10 to 20 lb of wood ash on 1000 sq ft is 49 to 98 g/m2, 10 to 25 g of calcium", () => {
    near(spread("wood-ash", "10 lb per 1000 ft2")?.amountG, 49);
    near(spread("wood-ash", "20 lb per 1000 ft2")?.amountG, 98);
    expect(spread("wood-ash", "10 lb per 1000 ft2")?.thisSeason.perM2G?.low).toBeGreaterThan(8.7);
    expect(spread("wood-ash", "20 lb per 1000 ft2")?.thisSeason.perM2G?.high).toBeLessThan(25);
  });

  test("a growers' book: 2 lb of shell on 100 sq ft is 98 g/m2, 37 g of calcium once dissolved", () => {
    near(spread("eggshell", "2 lb per 100 ft2", "fine")?.thisSeason.perM2G?.high, 37.5);
  });

  test("Preprints 202310.1834, 2023: shell is 94.65 to 97.23 % calcium carbonate", () => {
    const shell = amendments.amendments.find(({ what }) => what === "eggshell")?.calcium_g_per_kg;
    near(shell?.low, 946.5 * calciumInCarbonate);
    near(shell?.high, 972.3 * calciumInCarbonate);
  });

  test("New England Vegetable Management Guide, Calcium: gypsum 19 to 23 %, superphosphate 18 to 21 %", () => {
    const of = (what: string) =>
      amendments.amendments.find((one) => one.what === what)?.calcium_g_per_kg;
    expect(of("gypsum")).toEqual({ low: 190, high: 230 });
    expect(of("superphosphate")).toEqual({ low: 180, high: 210 });
    expect(of("calcium-nitrate")).toEqual({ low: 190, high: 190 });
  });

  test("Crop File 2.03.012: of fine lime 90 to 100 % acts in year one, of medium 20 to 60, of coarse 0 to 10", () => {
    expect(percentOf("fine")).toEqual([90, 100]);
    expect(percentOf("medium")).toEqual([20, 60]);
    expect(percentOf("coarse")).toEqual([0, 10]);
  });

  test("formulas: dolomite has no less than 217 g/kg, gypsum no more than 233", () => {
    // CaMg(CO3)2: 40.078 of 184.401; CaSO4.2H2O: 40.078 of 172.171.
    const dolomite = amendments.amendments.find(({ what }) => what === "dolomite");
    near(dolomite?.calcium_g_per_kg.low, (1000 * 40.078) / 184.401);
    const gypsum = amendments.amendments.find(({ what }) => what === "gypsum");
    expect(gypsum?.calcium_g_per_kg.high).toBeLessThan((1000 * 40.078) / 172.171);
  });
});

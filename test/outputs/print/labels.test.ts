import { describe, expect, test } from "vitest";
import { day } from "../../../src/dates.js";
import { bottleLabels, labelLines } from "../../../src/outputs/print/bottle-labels.js";
import { fitLabel } from "../../../src/outputs/print/label-fit.js";
import { type BottleLabel, labelRows } from "../../../src/outputs/print/label-rows.js";
import { ownSheet } from "../../../src/outputs/print/label-sheets.js";
import { gardenText, planFile, planted } from "../../support/a-garden.js";
import { nothingFed, oddNames, planOf, sixtyBeds, weirCottage, withoutStock } from "../gardens.js";
import { labelSheets, sheetNamed } from "./labels-data.js";

const weir = planOf(weirCottage);
const count = (text: string, part: RegExp) => text.match(part)?.length ?? 0;

const aLabel = (differs: Partial<BottleLabel> = {}): BottleLabel => ({
  garden: "Weir Cottage",
  batch: "B1",
  bottle: 1,
  bottlesOfBatch: 1,
  madeOn: day("2027-05-08"),
  useBy: day("2027-08-06"),
  strengthGPerL: 17.7,
  pour: "shaken",
  amounts: "metric",
  doses: [{ vessel: "9 L can", stock: "22 mL", crops: ["tomato", "pepper"] }],
  ...differs,
});

function made(labels: readonly BottleLabel[], sheet = sheetNamed("63.5x38.1"), skip = 0): string {
  const result = bottleLabels(labels, sheet, { skip });
  if (!result.ok) throw new Error(result.problems[0]?.message);
  return result.value;
}

describe("labels of a plan", () => {
  test("are one a bottle: those in hand, and those each batch will fill", () => {
    const plan = planOf(sixtyBeds());
    const batches = plan.stock?.making.batches ?? [];
    const labels = labelRows(plan);
    expect(batches.some(({ bottles }) => bottles > 1)).toBe(true);
    expect(labels).toHaveLength(batches.reduce((sum, { bottles }) => sum + bottles, 0));
    for (const { id, bottles, readyOn, useBy } of batches) {
      const ofBatch = labels.filter(({ batch }) => batch === id);
      expect(ofBatch.map(({ bottle }) => bottle)).toEqual(
        Array.from({ length: bottles }, (_, i) => i + 1),
      );
      expect(ofBatch[0]).toMatchObject({ madeOn: readyOn, useBy, bottlesOfBatch: bottles });
    }
  });

  test("never say more than the rule's highest rate, however weak a bottle poured with another", () => {
    const batch = { made: "2027-05-20", keep: "fridge", acid: "citric" };
    const planned = planFile(
      gardenText({
        ...planted({ water: "27 L" }),
        can: "9 L",
        stock: {
          batches: [
            { ...batch, id: "weak", strength: "2 g/L", volume: "75 mL" },
            { ...batch, id: "strong", strength: "12 g/L", volume: "500 mL", made: "2027-05-25" },
          ],
        },
      }),
      undefined,
      day("2027-06-01"),
    );
    if (!planned.ok) throw new Error("the garden has problems");
    const [rule] = planned.value.rules;
    expect(rule?.highestRateMlPerL).toBe(5);
    const weak = labelRows(planned.value).find((label) => label.batch === "weak");
    expect(weak?.doses).toMatchObject([{ vessel: "9 L can", stock: "45 mL" }]);
  });

  test("say how much goes into a full can, for whom, as the rounds have it", () => {
    const [b1] = labelRows(weir);
    const fills = weir.rounds
      .flatMap((round) => round.beds.flatMap((bed) => bed.mixes))
      .filter((mix) => mix.pours?.some(({ batch }) => batch === "B1") === true)
      .flatMap((mix) =>
        mix.fills.filter(({ full }) => full).map((fill) => `${mix.route} ${fill.stockText}`),
      );
    expect(b1).toMatchObject({
      batch: "B1",
      madeOn: "2027-05-08",
      useBy: "2027-08-06",
      strengthGPerL: weir.stock?.inHand?.[0]?.strengthGPerL,
    });
    expect(
      new Set(
        b1?.doses.map(
          ({ vessel, stock }) => `${vessel.endsWith("can") ? "drench" : "foliar"} ${stock}`,
        ),
      ),
    ).toEqual(new Set(fills));
    expect(b1?.doses.flatMap(({ crops }) => crops).sort()).toEqual(["apple", "pepper", "tomato"]);
  });

  test("leave room to write where the day is not known", () => {
    expect(made([aLabel({ batch: "x" })])).not.toContain("____");
    const { madeOn, ...undated } = aLabel();
    expect(madeOn).toBeDefined();
    expect(made([undated])).toContain("Made ____");
  });

  test("are none where there is no stock", () => {
    expect(labelRows(withoutStock(weir))).toEqual([]);
    expect(labelRows(planOf(nothingFed))).toEqual([]);
    expect(made([])).toContain("There is no bottle to label.");
  });
});

describe("a label", () => {
  test.each(["tall", "wide"] as const)("in %s shape says all that a bottle must say", (shape) => {
    const text = labelLines(aLabel({ bottlesOfBatch: 2 }), shape)
      .map((line) => line.text)
      .join("\n");
    for (const words of [
      "Calcium plant feed",
      "Weir Cottage",
      "Batch B1, bottle 1 of 2",
      "Made 8 May 2027",
      "Use by 6 August 2027",
      "Strength 17.7 g calcium per litre",
      "22 mL per 9 L can: tomato, pepper",
      "Shake well.",
      "Not for drinking. Keep away from food and children.",
    ])
      expect(text).toContain(words);
  });

  test("of stock that is poured clear says not to shake it", () => {
    const text = labelLines(aLabel({ pour: "clear" }), "tall")
      .map((line) => line.text)
      .join("\n");
    expect(text).toContain("Do not shake");
    expect(text).not.toContain("Shake well");
  });

  test("has larger letters where there is more room", () => {
    const lines = labelLines(aLabel(), "tall");
    const sizes = [40, 60, 80, 120].map((mm) => fitLabel(lines, mm, mm * 0.7)?.letterPt ?? 0);
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    expect(new Set(sizes).size).toBe(sizes.length);
  });

  test("wraps a long name, and in less room shortens it and has the whole in small print", () => {
    const garden = "The kitchen garden behind the old parsonage at the end of the lane";
    const lines = labelLines(aLabel({ garden }), "tall");
    expect(fitLabel(lines, 95, 60)?.lines.map((line) => line.text)).toContain(garden);
    const small = fitLabel(lines, 45, 26)?.lines ?? [];
    expect(small.find((line) => line.kind === "name")?.text).toMatch(/^The kitchen.*…$/);
    expect(small.filter((line) => line.kind === "small").map((line) => line.text)).toContain(
      garden,
    );
  });

  test("never becomes markup", () => {
    const page = made(labelRows(planOf(oddNames)));
    expect(page).not.toMatch(/<script|<b>/);
    expect(page).toContain("&lt;b&gt;Bob &amp; Sons&#39;&lt;/b&gt;");
  });
});

describe("sheets", () => {
  test.each(labelSheets.map((sheet) => [sheet.name, sheet] as const))(
    "%s takes the labels of a garden",
    (_, sheet) => {
      const labels = labelRows(weir);
      expect(count(made(labels, sheet), /class="label /g)).toBe(labels.length);
    },
  );

  test("are as many as it takes, each place used once", () => {
    const page = made(Array.from({ length: 50 }, () => aLabel()));
    expect(count(page, /class="sheet"/g)).toBe(3);
    const places = [...page.matchAll(/class="label (c\d+ r\d+)/g)].map((match) => match[1]);
    expect(new Set(places.slice(0, 21)).size).toBe(21);
    expect(places.slice(42)).toEqual(places.slice(0, 8));
  });

  test("leave out the places that are used up already", () => {
    const page = made([aLabel(), aLabel()], sheetNamed("63.5x38.1"), 20);
    expect([...page.matchAll(/class="label (c\d+ r\d+)/g)].map((m) => m[1])).toEqual([
      "c2 r6",
      "c0 r0",
    ]);
    expect(count(page, /class="sheet"/g)).toBe(2);
  });

  test("that do not fit the paper, or labels that cannot hold the text, are refused with a way out", () => {
    const wide = bottleLabels(
      [aLabel()],
      ownSheet({ paper: "a4", widthMm: 150, heightMm: 40, columns: 2 }),
    );
    expect(wide).toMatchObject({
      ok: false,
      problems: [
        { code: "label-sheet", message: expect.stringContaining("wider than A4") as string },
      ],
    });
    const tiny = bottleLabels([aLabel()], ownSheet({ paper: "a4", widthMm: 20, heightMm: 10 }));
    expect(tiny).toMatchObject({
      ok: false,
      problems: [{ code: "label-too-small", mend: "choose larger labels" }],
    });
  });
});

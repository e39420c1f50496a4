// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../../src/dates.js";
import { bottleLabels } from "../../../src/outputs/print/bottle-labels.js";
import { fitLabels } from "../../../src/outputs/print/label-fit.js";
import { type BottleLabel, labelRows } from "../../../src/outputs/print/label-rows.js";
import { blocks, type Detail, details, labelText } from "../../../src/outputs/print/label-text.js";
import { ownSheet } from "../../../src/outputs/print/label-sheets.js";
import { seasonSheet } from "../../../src/outputs/print/season-sheet.js";
import { widthEm } from "../../../src/outputs/text-width.js";
import { labelCautions } from "../../../src/words/index.js";
import { gardenText, planFile, planted } from "../../support/a-garden.js";
import { nothingFed, oddNames, planOf, sixtyBeds, weirCottage, withoutStock } from "../gardens.js";
import { aLabel, allAmounts, labelSheets, longNames, sheetNamed } from "./labels-data.js";

const weir = planOf(weirCottage);
const count = (text: string, part: RegExp) => text.match(part)?.length ?? 0;

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
    expect(weak?.doses).toMatchObject([{ vessel: "9 L can", stock: ["45 mL"] }]);
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
          ({ vessel, stock }) =>
            `${vessel.endsWith("can") ? "drench" : "foliar"} ${stock.join(" to ")}`,
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

/** As it is read, block by block. */
const wordsOf = (label: BottleLabel, detail: Detail): string => {
  const text = labelText(label, detail);
  return blocks
    .flatMap((block) => text[block].map((runs) => runs.map((run) => run.text).join("")))
    .join("\n")
    .replaceAll("\u00a0", " ");
};

describe("a label", () => {
  test("says all that a bottle must say, the largest being name, use by and what goes into a full can", () => {
    const label = aLabel({ bottlesOfBatch: 2 });
    expect(wordsOf(label, "all").split("\n")).toEqual([
      "Calcium plant feed",
      "Batch B1, bottle 1 of 2",
      "Use by 6 August 2027",
      "Shake well.",
      "22 mL per full 9 L can: pepper, tomato",
      "Made 8 May 2027. Strength 17.7 g calcium per litre.",
      "Weir Cottage",
      "Plant feed, not for drinking. Keep away from food, children and animals. Throw away when past its day or mouldy, or when it smells or gasses again.",
    ]);
    const text = labelText(label, "all");
    const large = blocks
      .flatMap((block) => text[block].flat())
      .filter((run) => run.large)
      .map((run) => run.text.replaceAll("\u00a0", " "));
    expect(large).toEqual([
      "Calcium plant feed",
      "Batch B1, bottle 1 of 2",
      "Use by 6 August 2027",
      "22 mL",
    ]);
  });

  test("has less to say where it is small, but always what it is, until when, how much and a warning", () => {
    const label = aLabel({
      doses: [
        { vessel: "9 L can", stock: ["20 mL"], crops: ["pepper"] },
        { vessel: "9 L can", stock: ["22 mL"], crops: ["tomato"] },
      ],
      dosesInShort: [{ vessel: "9 L can", stock: ["20", "22 mL"], crops: [] }],
    });
    expect(wordsOf(label, "bare").split("\n")).toEqual([
      "Calcium plant feed",
      "Batch B1",
      "Use by 6 August 2027",
      "20 to 22 mL per 9 L can",
      "Shake well. Plant feed. Not for drinking. Keep from children.",
    ]);
    const lengths = details.map((detail) => wordsOf(label, detail).length);
    expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
  });

  test.each(details)("of stock that is poured clear says not to shake it (%s)", (detail) => {
    const text = wordsOf(aLabel({ pour: "clear" }), detail);
    expect(text).toContain("Do not shake");
    expect(text).not.toContain("Shake well");
  });

  test("has larger letters where there is more room", () => {
    const sizes = [45, 60, 80, 120].map((mm) => fitLabels([aLabel()], mm, mm)?.largePt ?? 0);
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    expect(new Set(sizes).size).toBe(sizes.length);
  });

  test("of a US garden has its days as they are said there", () => {
    const text = wordsOf(aLabel({ amounts: "us" }), "all");
    expect(text).toContain("Use by August 6, 2027");
    expect(text).toContain("Made May 8, 2027");
  });

  test("keeps a long name whole", () => {
    const garden = "The kitchen garden behind the old parsonage at the end of the lane";
    expect(made([aLabel({ garden })], sheetNamed("63.5x72"))).toContain(garden);
  });

  test("breaks no date and no amount", () => {
    for (const widthMm of [30, 40, 50]) {
      const fit = fitLabels([aLabel()], widthMm, 300);
      const usedMm = ((fit?.largePt ?? 0) * 25.4 * widthEm("6 August 2027", "print")) / 72;
      expect(fit?.shape).toBe("tall");
      expect(usedMm).toBeLessThanOrEqual(widthMm);
    }
  });

  test("never becomes markup", () => {
    const page = made(labelRows(planOf(oddNames)));
    expect(page).not.toMatch(/<script|<b>/);
    expect(page).toContain("&lt;b&gt;Bob &amp; Sons&#39;&lt;/b&gt;");
  });
});

describe("sheets", () => {
  describe.each(allAmounts)("in %s measures, with the longest names of crops", (amounts) => {
    const plan = longNames(amounts);
    const labels = labelRows(plan);

    test.each(labelSheets.map((sheet) => [sheet.name, sheet] as const))(
      "%s holds all, or few words, and nothing under 6 pt",
      (_, sheet) => {
        const page = made(labels, sheet);
        const read = page.replaceAll("\u00a0", " ");
        expect(count(page, /class="label /g)).toBe(labels.length);
        const sizes = [...page.matchAll(/font-size:([\d.]+)pt/g)].map(([, pt]) => Number(pt));
        expect(Math.min(...sizes)).toBeGreaterThanOrEqual(6);
        for (const { useBy = "", dosesInShort } of labels) {
          expect(read).toMatch(new RegExp(`Use by [^<]*${useBy.slice(0, 4)}`));
          for (const { stock, vessel } of dosesInShort)
            for (const part of [...stock, vessel]) expect(read).toContain(part);
        }
        const isWhole = page.includes(labelCautions.full);
        expect(count(page, /class="foot"/g)).toBe(labels.length);
        expect(isWhole || page.includes(labelCautions.short)).toBe(true);
        // What a label leaves out is told where it is to be found, and is found there.
        expect(page.includes("the season sheet has all cautions")).toBe(!isWhole);
      },
    );

    test("its sheet has what small labels leave out", () => {
      const sheet = seasonSheet(plan, { paper: "a4" });
      for (const words of ["food", "children", "animals", "mouldy", "smells or gasses again"]) {
        expect(labelCautions.full).toContain(words);
        expect(sheet).toContain(words);
      }
    });

    test.each(["63.5x72", "101.6x50.8", "99.1x67.7"])("%s, the usual one, holds all", (name) => {
      expect(made(labels, sheetNamed(name))).toContain(labelCautions.full);
    });
  });

  test("have one layout for all their labels, that of the one which needs most room", () => {
    const long = aLabel({
      batch: "b2",
      doses: [
        ...aLabel().doses,
        { vessel: "2 L sprayer", stock: ["10", "12 mL"], crops: ["apple", "pear", "quince"] },
      ],
    });
    const fit = (labels: readonly BottleLabel[]) => fitLabels(labels, 58.5, 67);
    expect(fit([aLabel()])?.largePt).toBeGreaterThan(fit([long])?.largePt ?? Infinity);
    expect(fit([aLabel(), long])).toEqual(fit([long]));
    const bottles = [10, 9, 1].map((bottle) => ({
      ...aLabel({ batch: "b3" }),
      bottle,
      bottlesOfBatch: 10,
    }));
    expect(fit(bottles)).toEqual(fit(bottles.slice(0, 1)));
    expect(count(made([aLabel(), long]), /\.large\{/g)).toBe(1);
  });

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

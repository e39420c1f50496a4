import { describe, expect, it } from "vitest";
import { descriptionOf, type TripFacts, type TripWords } from "../../src/calendar/description.js";
import { day } from "../../src/dates.js";
import type { BedRound, CanMix, Feeding } from "../../src/season/season-plan.js";
import { aBedRound, aFeeding, aFill, aMix, anOtherFeed } from "../support/a-plan.js";

/** Lines about beds, and what differs from an ordinary trip there. */
function linesFor(
  beds: readonly BedRound[],
  { amounts = "metric", pour, ...facts }: Partial<TripFacts & TripWords> = {},
): string[] {
  return descriptionOf(
    { beds, feeds: [], newBottles: [], told: [], given: false, ...facts },
    {
      amounts,
      nameOf: (planting) => `${planting} by name`,
      ...(pour === undefined ? {} : { pour }),
    },
  );
}

const withMix = (differs: Partial<CanMix>) => [aBedRound({ mixes: [aMix(differs)] })];
const withFeeding = (differs: Partial<Feeding>) => withMix({ feedings: [aFeeding(differs)] });

describe("the description of a round", () => {
  it("lists each bed with fills, millilitres, stage and window", () => {
    const lines = linesFor([aBedRound()]);
    expect(lines.slice(0, 8)).toEqual([
      "South bed:",
      "Soil drench, 2.5 mL of stock to the litre",
      "- 2 full cans: 23 mL of stock in 9 L of water each",
      "- 1 part can: 10 mL of stock in 4 L of water",
      "- calcium in each litre: 50 mg from the stock",
      "- toms (tomato): 22 L; fruit growth; feeding 3, due 2027-06-10 to 2027-06-16",
      "",
      "In all: 56 mL of stock, 22 L of water",
    ]);
  });

  it("lists every bed and every mix however many there are", () => {
    const beds = Array.from({ length: 40 }, (_, i) => aBedRound({ bedName: `Bed ${i}` }));
    const lines = linesFor(beds);
    expect(lines.filter((line) => /^Bed \d+:$/.test(line))).toHaveLength(40);
    expect(lines.filter((line) => line.startsWith("- 2 full cans"))).toHaveLength(40);
    expect(lines).toContain("In all: 2240 mL of stock, 880 L of water");
  });

  it("tells a US grower spoons and gallons alone", () => {
    const fills = [
      aFill({ stockMl: 18.48, waterText: "2 gal", stockText: "3 3/4 tsp", waterL: 7.570823568 }),
    ];
    const lines = linesFor(withMix({ fills, feedings: [aFeeding({ waterL: 7.570823568 })] }), {
      amounts: "us",
    });
    expect(lines).toContain("- 1 full can: 3 3/4 tsp of stock in 2 gal of water");
    expect(lines.join("\n")).toMatch(/toms \(tomato\): 2 gal;/);
    expect(lines.join("\n")).toMatch(/In all: .* of stock, 2 gal of water/);
    expect(lines[1]).toBe("Soil drench, 1.92 tsp of stock to the gallon");
    expect(lines.join("\n")).not.toMatch(/mL|litre/);
  });

  it("counts imperial gallons in an imperial garden", () => {
    const lines = linesFor(withMix({ fills: [aFill({ waterL: 9.09218 })] }), {
      amounts: "imperial",
    }).join("\n");
    expect(lines).toMatch(/, 2 gal of water/);
  });

  it("adds up a big round to the millilitre", () => {
    const fills = [aFill({ count: 99, stockMl: 23 }), aFill({ full: false, stockMl: 6 })];
    expect(linesFor(withMix({ fills }))).toContain("In all: 2283 mL of stock, 900 L of water");
  });

  it("says when the day misses the window", () => {
    const window = { earliest: day("2027-06-01"), latest: day("2027-06-01") };
    expect(linesFor(withFeeding({ inWindow: false, window })).join("\n")).toContain(
      "due 2027-06-01, which this day misses",
    );
  });

  it("tells warnings and notes after the amounts", () => {
    const lines = linesFor([aBedRound()], { told: ["Warning: toms go unfed"] });
    expect(lines.indexOf("Warning: toms go unfed")).toBeGreaterThan(
      lines.indexOf("In all: 56 mL of stock, 22 L of water"),
    );
  });

  it.each([
    ["disputed", /disagree on whether this helps: toms/],
    ["advised-against", /does not help; it is here because you asked for it: toms/],
  ] as const)("owns up to %s evidence", (evidence, words) => {
    expect(linesFor(withFeeding({ evidence })).join("\n")).toMatch(words);
  });

  it("is silent on evidence that supports it", () => {
    const text = linesFor(withFeeding({ evidence: "published" })).join("\n");
    expect(text).not.toMatch(/disagree|does not help/);
  });
});

describe("what a can carries", () => {
  const calcium = (differs: Partial<CanMix>, pour?: TripWords["pour"]) =>
    linesFor(withMix(differs), pour === undefined ? {} : { pour }).find((line) =>
      line.startsWith("- calcium"),
    );
  const known = { calciumMgPerL: 44.38, tapCalciumMgPerL: 36.04, clearCalciumMgPerL: 0.476 };

  it("is told from the stock, from the tap, and as it would be poured clear", () => {
    expect(calcium(known)).toBe(
      "- calcium in each litre: 44.4 mg from the stock (poured clear only 0.48 mg), 36 mg from the tap",
    );
  });

  it("is at most so much from the tap where hardness alone is known", () => {
    expect(calcium({ ...known, tapCalciumAtMost: true })).toContain(", up to 36 mg from the tap");
  });

  it("leaves out the tap where the water is not known", () => {
    expect(calcium({ calciumMgPerL: 44 })).toBe("- calcium in each litre: 44 mg from the stock");
  });

  it("leaves out the clear part where it is as good, or is what is poured", () => {
    expect(calcium({ ...known, clearCalciumMgPerL: 44 })).not.toContain("clear");
    expect(calcium(known, "clear")).not.toContain("clear");
  });
});

describe("the bottle", () => {
  const pours = [
    { batch: "B1", ml: 11, strengthGPerL: 17.8 },
    { batch: "B2", ml: 12, strengthGPerL: 12 },
  ];

  it("is named at the cans that it is poured into", () => {
    expect(linesFor(withMix({ pours: pours.slice(0, 1) }))).toContain("- from bottle B1");
  });

  it("is named with its share where a can is poured from two", () => {
    expect(linesFor(withMix({ pours }))).toContain("- 11 mL from bottle B1, 12 mL from bottle B2");
  });

  it.each([
    [12, "New bottle: B2, 12 g of calcium to the litre, 17.8 g in the one before: mL differ"],
    [17.8, "New bottle: B2, 17.8 g of calcium to the litre, as in the one before"],
  ])("is told first when it is a new one, with what that changes (%d g/L)", (strength, line) => {
    const newBottles = [{ batch: "B2", strengthGPerL: strength, wasGPerL: 17.8 }];
    expect(linesFor([aBedRound()], { newBottles })[0]).toBe(line);
  });

  it("says only its own strength when that of the one before is not known", () => {
    const newBottles = [{ batch: "B2", strengthGPerL: 12 }];
    expect(linesFor([aBedRound()], { newBottles })[0]).toBe(
      "New bottle: B2, 12 g of calcium to the litre",
    );
  });
});

describe("other feeds", () => {
  it("come after the calcium, bed by bed, with cans, dose and plantings by name", () => {
    const lines = linesFor([aBedRound()], { feeds: [anOtherFeed()] });
    const at = lines.indexOf("Other feeds, each in cans of its own:");
    expect(at).toBeGreaterThan(lines.indexOf("In all: 56 mL of stock, 22 L of water"));
    expect(lines.slice(at + 1, at + 4)).toEqual([
      "South bed: comfrey tea, 100 mL to the litre",
      "- 1 full can: 900 mL of comfrey tea in 9 L of water",
      "- for toms by name",
    ]);
  });

  it("say since when their bottle may be open, where its shelf life is known", () => {
    const feed = anOtherFeed({ openedSince: day("2027-05-13") });
    expect(linesFor([], { feeds: [feed] })).toContain(
      "- from a bottle opened on 2027-05-13 or later",
    );
    expect(linesFor([], { feeds: [anOtherFeed()] }).join()).not.toContain("bottle opened");
  });

  it("alone tell neither stock nor how to shake it, but their own caution", () => {
    const text = linesFor([], { feeds: [anOtherFeed()] }).join("\n");
    expect(text).not.toMatch(/In all|Shake|Other feeds/);
    expect(text).toMatch(/what the label of each feed says/);
    expect(text).toMatch(/no other feed in the same can/);
  });
});

describe("a round that the log holds", () => {
  const lines = linesFor([aBedRound()], { given: true });

  it("says so first, and keeps amounts and plantings", () => {
    expect(lines[0]).toBe("Given: the log holds it.");
    expect(lines).toContain("- 2 full cans: 23 mL of stock in 9 L of water each");
    expect(lines).toContain("- toms (tomato): 22 L; fruit growth; feeding 3");
  });

  it("is past cautions and due days", () => {
    expect(lines.join("\n")).not.toMatch(/Shake|Water dry soil|due/);
  });
});

describe("the cautions of a day", () => {
  const cautions = (differs: Partial<CanMix>, words: Partial<TripWords> = {}) =>
    linesFor(withMix(differs), words).join("\n");

  it("tell to shake the bottle or not, as the garden pours", () => {
    expect(cautions({}, { pour: "shaken" })).toMatch(/^Shake the bottle\. Measure/m);
    expect(cautions({}, { pour: "clear" })).toMatch(/^Do not shake the bottle/m);
    expect(cautions({})).toMatch(/^Shake the bottle, unless you pour off the clear part only/m);
  });

  it("tell how to handle bottle and can at a drench, not how to spray", () => {
    expect(cautions({})).toMatch(/Shake the bottle.*stir/);
    expect(cautions({})).not.toMatch(/Spray|Wash produce/);
  });

  it("tell when to spray, and to wash produce, at a leaf spray", () => {
    expect(cautions({ route: "foliar" })).toMatch(/cool of the morning or evening/);
    expect(cautions({ route: "foliar" })).toMatch(/Wash produce/);
    expect(cautions({ route: "foliar" })).not.toMatch(/Water dry soil/);
    expect(cautions({ route: "foliar" })).toMatch(/2 full sprayers/);
  });

  it.each(["ripening", "harvest"] as const)(
    "tell to wash produce when it is eaten soon (%s)",
    (stage) => {
      expect(cautions({ feedings: [aFeeding({ stage })] })).toMatch(/Wash produce/);
    },
  );

  it("always defer to local rules", () => {
    expect(cautions({})).toMatch(/Local rules/);
    expect(cautions({ route: "foliar" })).toMatch(/Local rules/);
  });
});

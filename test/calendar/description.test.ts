import { describe, expect, it } from "vitest";
import { descriptionOf } from "../../src/calendar/description.js";
import { day } from "../../src/dates.js";
import type { CanMix, Feeding } from "../../src/season-plan.js";
import { aBedRound, aFeeding, aFill, aMix, aWarning } from "../support/a-plan.js";

const withMix = (differs: Partial<CanMix>) => [aBedRound({ mixes: [aMix(differs)] })];
const withFeeding = (differs: Partial<Feeding>) => withMix({ feedings: [aFeeding(differs)] });

describe("the description of a round", () => {
  it("lists each bed with fills, millilitres, stage and window", () => {
    const lines = descriptionOf([aBedRound()], [], "metric");
    expect(lines.slice(0, 7)).toEqual([
      "South bed:",
      "Soil drench, 2.5 mL of stock to the litre: 50 mg of calcium in each litre",
      "- 2 full cans: 23 mL of stock in 9 L of water each",
      "- 1 part can: 10 mL of stock in 4 L of water",
      "- toms (tomato): 22 L; fruit growth; feeding 3, due 2027-06-10 to 2027-06-16",
      "",
      "In all: 56 mL of stock, 22 L of water",
    ]);
  });

  it("lists every bed and every mix however many there are", () => {
    const beds = Array.from({ length: 40 }, (_, i) => aBedRound({ bedName: `Bed ${i}` }));
    const lines = descriptionOf(beds, [], "metric");
    expect(lines.filter((line) => /^Bed \d+:$/.test(line))).toHaveLength(40);
    expect(lines.filter((line) => line.startsWith("- 2 full cans"))).toHaveLength(40);
    expect(lines).toContain("In all: 2240 mL of stock, 880 L of water");
  });

  it("adds millilitres where the grower measures in spoons, and gallons for litres", () => {
    const fills = [
      aFill({ stockMl: 18.48, waterText: "2 gal", stockText: "3 3/4 tsp", waterL: 7.57 }),
    ];
    const lines = descriptionOf(
      withMix({ fills, feedings: [aFeeding({ waterL: 7.57 })] }),
      [],
      "us",
    );
    expect(lines).toContain("- 1 full can: 3 3/4 tsp (18.5 mL) of stock in 2 gal of water");
    expect(lines.join("\n")).toMatch(/toms \(tomato\): 2 gal;/);
    expect(lines.join("\n")).toMatch(/In all: .* of stock, 2 gal of water/);
  });

  it("counts imperial gallons in an imperial garden", () => {
    const lines = descriptionOf(withMix({ waterL: 9.09218 }), [], "imperial").join("\n");
    expect(lines).toMatch(/, 2 gal of water/);
  });

  it("adds up a big round to the millilitre", () => {
    const fills = [aFill({ count: 99, stockMl: 23 }), aFill({ full: false, stockMl: 6 })];
    expect(descriptionOf(withMix({ fills }), [], "metric")).toContain(
      "In all: 2283 mL of stock, 900 L of water",
    );
  });

  it("says when the day misses the window", () => {
    const window = { earliest: day("2027-06-01"), latest: day("2027-06-01") };
    expect(
      descriptionOf(withFeeding({ inWindow: false, window }), [], "metric").join("\n"),
    ).toContain("due 2027-06-01, which this day misses");
  });

  it("gives each warning with what helps", () => {
    const lines = descriptionOf(
      [aBedRound()],
      [aWarning(), aWarning({ message: "dry", mend: "" })],
      "metric",
    );
    expect(lines).toContain("Warning: toms go unfed");
    expect(lines).toContain("What helps: feed by hand");
    expect(lines[lines.indexOf("Warning: dry") + 1]).not.toMatch(/^What helps/);
  });

  it.each([
    ["disputed", /disagree on whether this helps: toms/],
    ["advised-against", /does not help; it is here because you asked for it: toms/],
  ] as const)("owns up to %s evidence", (evidence, words) => {
    expect(descriptionOf(withFeeding({ evidence }), [], "metric").join("\n")).toMatch(words);
  });

  it("is silent on evidence that supports it", () => {
    const text = descriptionOf(withFeeding({ evidence: "published" }), [], "metric").join("\n");
    expect(text).not.toMatch(/disagree|does not help/);
  });
});

describe("the cautions of a day", () => {
  const cautions = (differs: Partial<CanMix>) =>
    descriptionOf(withMix(differs), [], "metric").join("\n");

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

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isolated, letters, nameInText, namesWithin } from "../../src/words/names.js";

test("takes an emoji of several characters for one letter", () => {
  expect(letters("👩‍🌾é")).toEqual(["👩‍🌾", "é"]);
});

test("keeps names that run right to left to themselves, others as they are (UAX #9 section 2.4)", () => {
  expect(isolated("פלפל")).toBe("\u2068פלפל\u2069");
  for (const name of ["פלפל", "طماطم", "𐤀", "Beet ב"])
    expect(nameInText(name)).toBe(isolated(name));
  for (const name of ["South wall", "Süd", "温室", "👩‍🌾"]) expect(nameInText(name)).toBe(name);
});

describe("names in a title", () => {
  const beds = ["South wall", "Glasshouse", "Long bed"];

  test("stand whole while they fit", () => {
    expect(namesWithin("Water 84 L: ", beds, 44)).toBe(
      "Water 84 L: South wall, Glasshouse, Long bed",
    );
    expect(namesWithin("Water 84 L: ", beds, 40)).toBe("Water 84 L: South wall, Glasshouse, …");
    expect(namesWithin("Water 84 L: ", beds, 30)).toBe("Water 84 L: South wall, …");
  });

  test("begin with the first one where not even that fits", () => {
    expect(namesWithin("Water 84 L: ", ["South wall by the gate", "B"], 20)).toBe(
      "Water 84 L: South w…",
    );
    expect(namesWithin("Water 84 L: ", ["אבגדהוזחטיכלמנסעפצקרשת"], 20)).toBe(
      "Water 84 L: \u2068אבגדה…\u2069",
    );
  });

  test("never take more letters than they may", () => {
    const name = fc.oneof(
      fc.string({ unit: "grapheme", maxLength: 50 }),
      fc.string({ unit: "binary", maxLength: 50 }),
      fc.string({ unit: fc.constantFrom("א", "ب", "👩‍🌾", "é", " "), maxLength: 50 }),
    );
    fc.assert(
      fc.property(fc.array(name, { minLength: 1, maxLength: 8 }), (names) => {
        const title = namesWithin("Water 1234 1/2 gal: ", names, 40);
        expect(letters(title).length).toBeLessThanOrEqual(40);
        expect(title.startsWith("Water 1234 1/2 gal: ")).toBe(true);
      }),
      { numRuns: 50 },
    );
  });
});

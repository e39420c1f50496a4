// @ts-nocheck
import { expect, test } from "vitest";
import { isolated, letters, nameInText } from "../../src/words/names.js";

test("takes an emoji of several characters for one letter", () => {
  expect(letters("👩‍🌾é")).toEqual(["👩‍🌾", "é"]);
});

test("keeps names that run right to left to themselves, others as they are (UAX #9 section 2.4)", () => {
  expect(isolated("פלפל")).toBe("\u2068פלפל\u2069");
  for (const name of ["פלפל", "طماطم", "𐤀", "Beet ב"])
    expect(nameInText(name)).toBe(isolated(name));
  for (const name of ["South wall", "Süd", "温室", "👩‍🌾"]) expect(nameInText(name)).toBe(name);
});

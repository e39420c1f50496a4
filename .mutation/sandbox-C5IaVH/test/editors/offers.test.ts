// @ts-nocheck
import { readFileSync } from "node:fs";
import { format } from "prettier";
import { expect, test } from "vitest";
import { findCrop } from "../../src/crops/catalogue.js";
import { knownZone } from "../../src/garden/zones.js";
import { catalogue, readSchema } from "../data/data-files.js";
import { cropOffers, type Offer, withOffers } from "./offers.js";

/** After a change of the catalogue or of a key: `npm run unit -- editors/offers -u`. */
test.each(["garden", "rules"])("schemas/%s offers and says what is made for it", async (name) => {
  const file = `../../schemas/${name}.schema.json`;
  const text = readFileSync(new URL(file, import.meta.url), "utf8");
  const made = await format(withOffers(text), { parser: "json", printWidth: 100 });
  await expect(made).toMatchFileSnapshot(file);
});

test("every crop word that is offered means its crop, and none is left out", () => {
  const words = cropOffers.map(({ label }) => label);
  expect(new Set(words).size).toBe(words.length);
  for (const { label, description = label } of cropOffers)
    expect(findCrop(label, catalogue)?.name).toBe(description);
  const meant = new Set(words.map((word) => findCrop(word, catalogue)?.key));
  expect(meant).toEqual(new Set(catalogue.crops.map(({ key }) => key)));
});

// Node.js knows zones by ICU's names, some of them older than those of zone.tab.
test("the time zones offered are those that Node.js knows, of places", () => {
  const { properties } = readSchema("garden") as {
    properties: { timezone: { defaultSnippets: Offer[] } };
  };
  const zones = properties.timezone.defaultSnippets.map(({ label }) => label);
  const icuName = (timeZone: string): string =>
    new Intl.DateTimeFormat("en", { timeZone }).resolvedOptions().timeZone;
  for (const zone of zones) expect(knownZone(zone), zone).toBe(zone);
  const places = Intl.supportedValuesOf("timeZone").filter((zone) => zone.includes("/"));
  expect(new Set(zones.map(icuName))).toEqual(new Set(places.map(icuName)));
});

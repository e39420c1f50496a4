/**
 * Hemispheres from time zones against the principal places of the zones: tz database, zone1970.tab
 * (public domain), signs of the latitudes.
 */
import { describe, expect, test } from "vitest";
import { hemisphereFromZone } from "../../src/garden/hemisphere.js";
import { knownZone } from "../../src/garden/zones.js";

// Zone, then latitude as printed: degrees and minutes, + is north. Vancouver is left out: by the
// newer of the time zone data that Node.js 20 to 24 carry its clocks no longer change.
const places = `
Europe/Andorra +4230
Europe/Tirane +4120
Europe/Vienna +4813
Europe/Brussels +5050
Europe/Sofia +4241
Europe/Zurich +4723
Europe/Berlin +5230
Europe/Dublin +5320
Europe/London +5130
Europe/Paris +4852
Europe/Madrid +4024
Europe/Lisbon +3843
Europe/Rome +4154
Europe/Athens +3758
Europe/Helsinki +6010
Atlantic/Bermuda +3217
Atlantic/Azores +3744
America/St_Johns +4734
America/Halifax +4439
America/Toronto +4339
America/Winnipeg +4953
America/New_York +4042
America/Chicago +4151
America/Denver +3944
America/Los_Angeles +3403
America/Anchorage +6113
America/Havana +2308
Asia/Jerusalem +3146
Asia/Beirut +3353
Australia/Lord_Howe -3133
Australia/Hobart -4253
Australia/Melbourne -3749
Australia/Sydney -3352
Australia/Broken_Hill -3157
Australia/Adelaide -3455
Pacific/Norfolk -2903
Pacific/Auckland -3652
Pacific/Chatham -4357
Pacific/Easter -2709
America/Santiago -3327
`;
const rows = places
  .trim()
  .split("\n")
  .map((line) => line.split(" ") as [string, string]);

describe("tz database, zone1970.tab", () => {
  test.each(rows)(
    "%s lies at latitude %s: its summer time tells the same half",
    (zone, latitude) => {
      for (const year of [2026, 2027, 2028])
        expect(hemisphereFromZone(zone, year)).toBe(latitude.startsWith("-") ? "south" : "north");
    },
  );

  test.each(rows)("%s is a zone by that name", (zone) => {
    expect(knownZone(zone)).toBe(zone);
    expect(knownZone(zone.toLowerCase())).toBe(zone);
  });
});

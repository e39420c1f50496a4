/**
 * Hemispheres from time zones against the principal places of the zones: tz database, zone.tab
 * (public domain), signs of the latitudes.
 */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { hemisphereFromZone } from "../../src/garden/hemisphere.js";
import { knownZone } from "../../src/garden/zones.js";
import { loadTables } from "../../src/tables.js";

// Zone, then latitude as printed: degrees and minutes, + is north.
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
America/Sao_Paulo -2332
America/Lima -1203
Africa/Johannesburg -2615
Africa/Harare -1750
Africa/Luanda -0848
Africa/Lagos +0627
Africa/Cairo +3003
Indian/Reunion -2052
Pacific/Nauru -0031
Asia/Singapore +0117
Asia/Tokyo +353916
Asia/Amman +3157
Asia/Dubai +2518
Europe/Istanbul +4101
America/Vancouver +4916
`;
const rows = places
  .trim()
  .split("\n")
  .map((line) => line.split(" ") as [string, string]);

describe("tz database, zone.tab", () => {
  test.each(rows)("%s lies at latitude %s, in the half that is taken", (zone, latitude) => {
    const half = hemisphereFromZone(zone, loadTables().zoneHalves);
    expect(half).toBe(latitude.startsWith("-") ? "south" : "north");
  });

  test.each(rows)("%s is a zone by that name", (zone) => {
    expect(knownZone(zone)).toBe(zone);
    expect(knownZone(zone.toLowerCase())).toBe(zone);
  });
});

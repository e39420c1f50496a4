// @ts-nocheck
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { gardenUid } from "../../src/calendar/calendar-event.js";
import { planEvents } from "../../src/calendar/plan-events.js";
import { aPlan } from "../support/a-plan.js";
import { textOf } from "../support/calendars.js";
import { contentLines } from "../support/ics.js";

/** Version 5 by the words of RFC 9562 section 5.5, with the SHA-1 of node:crypto. */
function namedUuid(namespace: string, name: string): string {
  const bytes = createHash("sha1")
    .update(Buffer.from(namespace.replaceAll("-", ""), "hex"))
    .update(name)
    .digest()
    .subarray(0, 16);
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | 0x50, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  return bytes.toString("hex").replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

describe("RFC 9562", () => {
  it("appendix A.4: the judge below gives the UUID of www.example.com in the DNS namespace", () => {
    const dnsNamespace = "6ba7b810-9dad-11d1-80b4-00c04fd430c8";
    expect(namedUuid(dnsNamespace, "www.example.com")).toBe("2ed6657d-e927-568b-95e1-2665a8aea6a2");
  });

  it("section 5.5: events are named by their garden's UUID and their key, in any script", () => {
    for (const id of ["weir-cottage", "garten-höhe", "畑"]) {
      const plan = aPlan({ garden: { id } });
      const events = planEvents(plan);
      expect(events.length).toBeGreaterThan(0);
      for (const event of events) expect(event.uid).toBe(namedUuid(gardenUid(id), event.key));
    }
  });
});

describe("RFC 7986", () => {
  const lines = (garden = {}) => contentLines(textOf(aPlan({ garden })));
  const wishes = {
    group: "round",
    remindersMinBefore: [],
    color: "turquoise",
    refreshHours: 168,
  } as const;

  it("section 5.7: a refresh interval is a positive duration with VALUE=DURATION, a week being P7D", () => {
    expect(lines({ calendar: wishes })).toContain("REFRESH-INTERVAL;VALUE=DURATION:P7D");
  });

  it("section 5.9: COLOR is a CSS3 colour name, on the calendar and on its events", () => {
    expect(lines({ calendar: wishes }).filter((line) => line === "COLOR:turquoise")).toHaveLength(
      2,
    );
  });

  it("sections 5.1 to 5.4: NAME, DESCRIPTION, UID and LAST-MODIFIED of the calendar stand once each", () => {
    const head = lines().slice(0, lines().indexOf("BEGIN:VEVENT"));
    for (const name of ["NAME", "DESCRIPTION", "UID", "LAST-MODIFIED"]) {
      expect(head.filter((line) => line.startsWith(`${name}:`))).toHaveLength(1);
    }
  });

  it("section 5.3: UIDs are UUIDs, with no host, user or garden in them", () => {
    const uids = lines().filter((line) => line.startsWith("UID:"));
    for (const uid of uids) expect(uid).toMatch(/^UID:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/);
    expect(uids.length).toBe(2);
  });
});

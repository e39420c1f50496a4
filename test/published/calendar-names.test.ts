import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { calendarMeta } from "../../src/calendar/calendar-event.js";
import { planEvents } from "../../src/calendar/plan-events.js";
import { writeCalendar } from "../../src/calendar/write-calendar.js";
import { sha1 } from "../../src/calendar/sha1.js";
import { uuidV5 } from "../../src/calendar/uuid.js";
import { aPlan } from "../support/a-plan.js";
import { contentLines } from "../support/ics.js";

const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString("hex");
const ascii = (text: string) => new TextEncoder().encode(text);
const dnsNamespace = "6ba7b810-9dad-11d1-80b4-00c04fd430c8";

describe("names of events", () => {
  it("RFC 9562 appendix A.4: version 5 UUID of www.example.com in the DNS namespace", () => {
    expect(uuidV5(dnsNamespace, "www.example.com")).toBe("2ed6657d-e927-568b-95e1-2665a8aea6a2");
  });

  it("Python documentation, module uuid: version 5 UUID of python.org in the DNS namespace", () => {
    expect(uuidV5(dnsNamespace, "python.org")).toBe("886313e1-3b8a-5372-9b90-0c9aee199e5d");
  });

  it.each([
    ["abc", "a9993e364706816aba3e25717850c26c9cd0d89d"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "84983e441c3bd26ebaae4aa1f95129e5e54670f1",
    ],
  ])("FIPS 180-2 appendix A (from memory): SHA-1 of %s", (text, digest) => {
    expect(hex(sha1(ascii(text)))).toBe(digest);
  });

  it("SHA-1 is node:crypto's for bytes of any length", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expect(hex(sha1(bytes))).toBe(createHash("sha1").update(bytes).digest("hex"));
      }),
    );
  });
});

describe("RFC 7986", () => {
  const lines = (garden = {}) => {
    const plan = aPlan({ garden });
    return contentLines(writeCalendar(planEvents(plan), calendarMeta(plan)));
  };
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
